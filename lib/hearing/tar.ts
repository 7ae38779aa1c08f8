import { createReadStream } from 'node:fs';

const block = 512;

const octal = (value: number, length: number): string =>
  `${value.toString(8).padStart(length - 1, '0')}\0`;

/** A ustar header (POSIX.1-1988). Owner, mode and time are fixed, so that the same files give the same archive. */
const header = (path: string, bytes: number): Buffer => {
  const split = path.length <= 100 ? 0 : path.lastIndexOf('/', 155);
  const prefix = path.slice(0, split);
  const name = split === 0 ? path : path.slice(split + 1);
  if (Buffer.byteLength(name) > 100)
    throw new Error(`the path ${path} is too long for the archive`);
  const head = Buffer.alloc(block);
  head.write(name, 0);
  head.write(octal(0o644, 8), 100);
  head.write(octal(0, 8), 108);
  head.write(octal(0, 8), 116);
  head.write(octal(bytes, 12), 124);
  head.write(octal(0, 12), 136);
  head.write(' '.repeat(8), 148);
  head.write('0', 156);
  head.write('ustar\x0000', 257, 'latin1');
  head.write(prefix, 345);
  const sum = head.reduce((total, byte) => total + byte, 0);
  head.write(`${sum.toString(8).padStart(6, '0')}\0 `, 148);
  return head;
};

/** The bytes of a tar archive of the files, each under the path it is given. */
export async function* tarOf(
  files: readonly { readonly path: string; readonly source: string; readonly bytes: number }[],
): AsyncGenerator<Buffer> {
  for (const { path, source, bytes } of files) {
    yield header(path, bytes);
    for await (const part of createReadStream(source)) yield part as Buffer;
    yield Buffer.alloc((block - (bytes % block)) % block);
  }
  yield Buffer.alloc(2 * block);
}
