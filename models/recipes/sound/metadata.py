"""TFLite metadata, written by hand: labels, and what sound the model wants.

Table fields are numbered as in the published metadata schema (file identifier M001).
"""

import io
import zipfile

import flatbuffers
from tensorflow.lite.python import schema_py_generated as schema

LABELS_FILE = "labels.txt"
TENSOR_AXIS_LABELS = 2
AUDIO_PROPERTIES = 4


def table(builder, fields, slots):
    """`fields`: slot number to a function that adds to the open table."""
    builder.StartObject(slots)
    for slot, add in sorted(fields.items()):
        add(slot)
    return builder.EndObject()


def vector(builder, offsets):
    builder.StartVector(4, len(offsets), 4)
    for offset in reversed(offsets):
        builder.PrependUOffsetTRelative(offset)
    return builder.EndVector()


def metadata(name, description, licence, rate_hz):
    builder = flatbuffers.Builder(1024)

    def text(value):
        offset = builder.CreateString(value)
        return lambda slot: builder.PrependUOffsetTRelativeSlot(slot, offset, 0)

    def link(offset):
        return lambda slot: builder.PrependUOffsetTRelativeSlot(slot, offset, 0)

    labels = table(
        builder,
        {0: text(LABELS_FILE), 2: lambda slot: builder.PrependInt8Slot(slot, TENSOR_AXIS_LABELS, 0)},
        5,
    )
    properties = table(
        builder,
        {
            0: lambda slot: builder.PrependUint32Slot(slot, rate_hz, 0),
            1: lambda slot: builder.PrependUint32Slot(slot, 1, 0),
        },
        2,
    )
    content = table(
        builder,
        {0: lambda slot: builder.PrependUint8Slot(slot, AUDIO_PROPERTIES, 0), 1: link(properties)},
        3,
    )
    sound = table(builder, {0: text("sound"), 3: link(content)}, 7)
    kinds = table(builder, {0: text("kinds"), 6: link(vector(builder, [labels]))}, 7)
    graph = table(builder, {2: link(vector(builder, [sound])), 3: link(vector(builder, [kinds]))}, 10)
    whole = table(
        builder,
        {
            0: text(name),
            1: text(description),
            2: text("1"),
            3: link(vector(builder, [graph])),
            5: text(licence),
            7: text("1.3.0"),
        },
        8,
    )
    builder.Finish(whole, file_identifier=b"M001")
    return bytes(builder.Output())


def with_metadata(model, labels, **facts):
    """The model's bytes with metadata in a buffer of their own, and the labels as a stored archive at the end."""
    content = schema.ModelT.InitFromObj(schema.Model.GetRootAsModel(bytearray(model), 0))
    content.metadata = [one for one in content.metadata or [] if one.name != b"TFLITE_METADATA"]
    buffer, entry = schema.BufferT(), schema.MetadataT()
    buffer.data = list(metadata(**facts))
    content.buffers.append(buffer)
    entry.name, entry.buffer = "TFLITE_METADATA", len(content.buffers) - 1
    content.metadata.append(entry)
    builder = flatbuffers.Builder(len(model) + 4096)
    builder.Finish(content.Pack(builder), file_identifier=b"TFL3")
    whole = io.BytesIO(bytes(builder.Output()))
    with zipfile.ZipFile(whole, "a", zipfile.ZIP_STORED) as archive:
        archive.writestr(zipfile.ZipInfo(LABELS_FILE), "\n".join(labels) + "\n")
    return whole.getvalue()
