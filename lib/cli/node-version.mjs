/** What is wrong with this Node, in one line; nothing where it will do. Plain syntax: an old Node must get this far. */
export function nodeProblem(version) {
  const parts = version.replace(/^v/, '').split('.').map(Number);
  const enough = parts[0] > 20 || (parts[0] === 20 && parts[1] >= 9);
  return enough ? undefined : 'Baycall needs Node 20.9 or later; this is Node ' + version + '.';
}
