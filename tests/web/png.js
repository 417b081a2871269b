// The pixels of a screenshot: a PNG of eight bits a channel, read by hand (RFC 2083), so that what is measured is what
// the browser painted and nothing that another library made of it.
import { inflateSync } from "node:zlib";

/** Width, height, and `at(x, y)` for red, green and blue. */
export function readPng(file) {
  const data = [];
  let head;
  for (let at = 8; at < file.length; ) {
    const size = file.readUInt32BE(at);
    const kind = file.toString("latin1", at + 4, at + 8);
    if (kind === "IHDR") head = file.subarray(at + 8, at + 8 + size);
    if (kind === "IDAT") data.push(file.subarray(at + 8, at + 8 + size));
    at += size + 12;
  }
  const [width, height] = [head.readUInt32BE(0), head.readUInt32BE(4)];
  const [depth, colour, interlaced] = [head[8], head[9], head[12]];
  const channels = { 2: 3, 6: 4 }[colour];
  if (depth !== 8 || !channels || interlaced) throw new Error("another kind of PNG");
  const raw = inflateSync(Buffer.concat(data));
  const long = width * channels;
  const pixels = Buffer.alloc(long * height);
  for (let y = 0; y < height; y++) {
    const filter = raw[y * (long + 1)];
    for (let x = 0; x < long; x++) {
      const left = x >= channels ? pixels[y * long + x - channels] : 0;
      const up = y > 0 ? pixels[(y - 1) * long + x] : 0;
      const corner = x >= channels && y > 0 ? pixels[(y - 1) * long + x - channels] : 0;
      const guess = [0, left, up, (left + up) >> 1, paeth(left, up, corner)][filter];
      pixels[y * long + x] = (raw[y * (long + 1) + 1 + x] + guess) & 255;
    }
  }
  return { width, height, at: (x, y) => [...pixels.subarray((y * width + x) * channels, (y * width + x) * channels + 3)] };
}

function paeth(left, up, corner) {
  const guess = left + up - corner;
  const off = [Math.abs(guess - left), Math.abs(guess - up), Math.abs(guess - corner)];
  if (off[0] <= off[1] && off[0] <= off[2]) return left;
  return off[1] <= off[2] ? up : corner;
}
