"""The words that the recogniser must know, whatever general frequency lists say."""

NUMBERS = """zero oh one two three four five six seven eight nine ten eleven twelve thirteen fourteen
fifteen sixteen seventeen eighteen nineteen twenty thirty forty fifty sixty seventy eighty ninety hundred
thousand million and point decimal half quarter quarters third thirds eighth eighths sixteenth sixteenths
thirty-second minus plus negative double triple first second third fourth fifth sixth seventh eighth ninth
tenth eleventh twelfth once twice dozen percent""".split()

UNITS = """newton newtons meter meters metre metres foot feet inch inches pound pounds millimeter
millimeters millimetre millimetres centimeter centimeters liter liters litre litres milliliter milliliters
gram grams kilogram kilograms kilo kilos kilometer kilometers mile miles bar bars psi degree degrees celsius
fahrenheit volt volts amp amps ampere amperes ohm ohms watt watts kilowatt kilowatts hertz minute minutes
second seconds hour hours day days week weeks month months year years ounce ounces gallon gallons pint pints
quart quarts mil mils micron microns thou turn turns click clicks rpm cc ton tons tonne tonnes pascal pascals
kilopascal kilopascals""".split()

TRADE = """torque torqued torques torquing retorque retorqued bolt bolts bolted unbolt nut nuts washer washers
gasket gaskets seal seals sealed sealant caliper calipers rotor rotors bearing bearings hub hubs bracket
brackets harness harnesses connector connectors connect connected disconnect disconnected thread threads
threaded threading locker threadlocker coolant oil oils gear gears gearbox brake brakes braking fluid fluids drain
drained draining fill filled filling refill refilled top topped bleed bled bleeding next back previous repeat
again done finish finished skip skipped undo redo confirm confirmed cancel cancelled canceled stop hold
holding resume resumed pause paused continue deviation deviations note notes reason reasons replace replaced
replacement reuse reused replacing loose loosen loosened tight tighten tightened tightening snug left right
upper lower front rear inner outer top bottom side middle center photo photos picture camera help foreman
supervisor shift step steps bay bays job jobs start started begin close closed open opened ready okay ok yes
no yeah yep nope affirmative negative correct incorrect wrong check checked pass passed fail failed failure
leak leaks leaking leaked clean cleaned cleaning cracked crack cracks worn bent stripped strip broken break
missing extra over under screw screws screwdriver stud studs pin pins clip clips clamp clamps hose hoses pipe
pipes tube tubes line lines fitting fittings filter filters pump pumps valve valves piston pistons cylinder
cylinders head heads block engine motor transmission clutch shaft shafts axle axles wheel wheels tire tires
tyre tyres rim rims spring springs shock shocks strut struts arm arms joint joints ball bushing bushings boot
boots belt belts chain chains pulley pulleys tensioner battery batteries cable cables wire wires wiring fuse
fuses relay relays sensor sensors switch switches lamp lamps light lights bulb bulbs plug plugs spark coil
coils injector injectors fuel gas gasoline diesel exhaust muffler intake manifold throttle radiator fan fans
thermostat heater compressor condenser evaporator turbo turbocharger alternator starter steering rack column
pedal pedals lever levers handle handles door doors hood bonnet trunk panel panels cover covers plate plates
shield shields guard guards mount mounts mounting frame chassis body bumper fender mirror mirrors window
windows windshield wiper wipers seat seats airbag grease greased lubricant lubricate lubricated lube solvent
degreaser cleaner glue adhesive tape loctite silicone paint painted primer rust rusted rusty corrosion
corroded scratch scratched dent dented damage damaged dirty dry wet hot cold warm cool wrench wrenches spanner
spanners socket sockets ratchet ratchets hammer mallet pliers drill drills bit bits saw file grinder gauge
gauges micrometer caliper ruler tool tools toolbox jack jacks lift lifts stand stands hoist crane bench vise
vice rag rags glove gloves goggles glasses helmet safety lockout tagout tag tags label labels serial part
parts number numbers code codes scan scanned barcode batch lot kit kits assembly subassembly assemble
assembled disassemble disassembled install installed installing installation uninstall remove removed removing
removal inspect inspected inspection measure measured measuring measurement measurements adjust adjusted
adjusting adjustment align aligned alignment calibrate calibrated calibration test tested testing verify
verified verify mark marked marking record recorded recording log logged sign signed signature approve approved
approval reject rejected rejection rework reworked scrap scrapped return returned order ordered deliver
delivered pick picked place placed put press pressed push pushed pull pulled turn turned rotate rotated twist
slide slid lock locked unlock unlocked secure secured attach attached detach detached fit fitted fits unfit
align apply applied wipe wiped rinse rinsed flush flushed spray sprayed soak soaked heat heated cut cutting
weld welded welding solder soldered crimp crimped rivet rivets riveted drive driver impact gun air pneumatic
hydraulic electric electrical mechanical manual automatic pressure vacuum voltage current temperature level
levels low high full empty half max maximum min minimum spec specs specification specifications value values
reading readings tolerance clearance gap play backlash runout depth height width length diameter thickness
weight angle position distance radius offset size sizes small medium large short long thick thin hard soft
rough smooth flat round square hex torx allen phillips slotted metric imperial grade class type model version
revision drawing manual procedure instruction instructions work order ticket task tasks list item items
quantity count station line cell floor shop workshop garage warehouse store stores supply supplier customer
vehicle vehicles car cars truck trucks van bus trailer forklift machine machines robot conveyor belt operator
technician mechanic engineer manager inspector lead team crew apprentice trainee break lunch end over now
later today tomorrow yesterday morning afternoon evening night early late time timer alarm clock hour minute
wait ready go save saved delete deleted clear cleared edit change changed update updated add added enter
entered type select selected choose show hide read repeat say said call called message messages send sent
question answer problem problems issue issues fault faults error errors warning warnings danger hazard spill
spilled fire smoke smell noise noisy vibration vibrating rattle rattling squeak squeaking grinding knocking
overheating overheated overtightened undertightened crossthreaded misaligned stuck seized jammed blocked
clogged contaminated burnt burned melted frayed chipped pitted scored warped torn ripped split swollen soft
soaked faded discolored out of stock unavailable available wrong size spare spares shim shims spacer spacers
dowel dowels bush collar flange flanges coupling couplings sprocket sprockets cam camshaft crank crankshaft
flywheel differential driveshaft propshaft halfshaft knuckle spindle trunnion yoke fork swingarm handlebar
saddle stem headset derailleur cassette spoke spokes nipple rotor pad pads shoe shoes drum drums disc discs
disk disks master cylinder reservoir cap caps lid lids dipstick sump pan tray  o-ring ring rings
circlip snap retaining cotter key keys keyway spline splines insert inserts helicoil tap taps die dies reamer
english french spanish language volume louder quieter mute unmute slower faster wake sleep kiosk screen
display button menu home page scroll up down zoom in out microphone speaker listen listening voice command
commands hello hi hey thanks thank please sorry goodbye bye mister sir madam hundredths tenths thousandths
setpoint target actual nominal range above below within outside ok'd good bad fine perfect great poor new old
used original aftermarket genuine spec'd red green blue yellow black white gray grey orange brown purple pink
silver gold copper brass bronze steel stainless aluminum aluminium iron titanium plastic rubber nylon ceramic
carbon fiber fibre cloth paper wood glass foam""".split()

# spelling alphabet, calendar, and everyday words that frequency lists may rank low
TRADE += """alpha bravo charlie delta echo foxtrot golf hotel india juliet kilo lima mike november oscar papa
quebec romeo sierra tango uniform victor whiskey x-ray yankee zulu january february march april may june july
august september october november december monday tuesday wednesday thursday friday saturday sunday eighteenth
thirteenth fourteenth fifteenth sixteenth seventeenth nineteenth twentieth thirtieth fortieth fiftieth sixtieth seventieth
eightieth ninetieth hundredth thousandth absorber absorbers welder lambda rubout windscreen antifreeze
intercooler stabiliser crankcase lathe chuck idler headlight taillight headlights coffee seatbelt petrol
refrigerant alternators milliamp milliamps milliliter millilitre millilitres centimetre centimetres kilometre
kilometres hertz revs counterclockwise clockwise counter barcode scanner clipboard pallet trolley ladder
aeroplane lorry thermometer notebook pencil bucket broom rope hook copper paste blade diagram report copy
history details settings confirm option reset quit exit search sort refresh equals dash slash comma decimal
defective tread mileage resistance flow photograph polish grind unscrew lower mount zoom aloud quiet""".split()

LETTERS = list("abcdefghijklmnopqrstuvwxyz")
