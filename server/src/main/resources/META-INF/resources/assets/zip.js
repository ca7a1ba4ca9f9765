// A zip archive of a few files (APPNOTE 6.3: local headers, central directory, end record), deflated where the browser can.

const encoder = new TextEncoder();
const MADE_BY_VERSION = 20;
const UTF_8_NAMES = 0x0800;
const STORED = 0;
const DEFLATED = 8;

const TABLE = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let bit = 0; bit < 8; bit++) {
    c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  }
  return c;
});

function crc32(bytes) {
  let crc = 0xffffffff;
  for (let i = 0; i < bytes.length; i++) {
    crc = TABLE[(crc ^ bytes[i]) & 0xff] ^ (crc >>> 8);
  }
  return (crc ^ 0xffffffff) >>> 0;
}

async function packed(bytes) {
  if (typeof CompressionStream === 'undefined') {
    return { method: STORED, data: bytes };
  }
  try {
    const stream = new Blob([bytes]).stream().pipeThrough(new CompressionStream('deflate-raw'));
    const data = new Uint8Array(await new Response(stream).arrayBuffer());
    return data.length < bytes.length ? { method: DEFLATED, data } : { method: STORED, data: bytes };
  } catch {
    // an older browser deflates, but not without a header of its own
    return { method: STORED, data: bytes };
  }
}

function record(length, fill) {
  const view = new DataView(new ArrayBuffer(length));
  let at = 0;
  const put = {
    2: value => view.setUint16(at, value, true),
    4: value => view.setUint32(at, value, true),
  };
  fill((size, value) => {
    put[size](value);
    at += size;
  });
  return new Uint8Array(view.buffer);
}

// What the local header and the central directory both say. The time is left out: the same files give the same archive.
function common(put, entry) {
  put(2, MADE_BY_VERSION);
  put(2, UTF_8_NAMES);
  put(2, entry.method);
  put(2, 0);
  put(2, 0x21);
  put(4, entry.crc);
  put(4, entry.data.length);
  put(4, entry.size);
  put(2, entry.name.length);
  put(2, 0);
}

function local(entry) {
  return record(30, put => {
    put(4, 0x04034b50);
    common(put, entry);
  });
}

function central(entry) {
  return record(46, put => {
    put(4, 0x02014b50);
    put(2, MADE_BY_VERSION);
    common(put, entry);
    put(2, 0);
    put(2, 0);
    put(2, 0);
    put(4, 0);
    put(4, entry.offset);
  });
}

function end(count, size, offset) {
  return record(22, put => {
    put(4, 0x06054b50);
    put(2, 0);
    put(2, 0);
    put(2, count);
    put(2, count);
    put(4, size);
    put(4, offset);
    put(2, 0);
  });
}

// files: [{ name, content }], content a string, a Blob or bytes. Gives a Blob.
export async function zipOf(files) {
  const parts = [];
  const directory = [];
  let offset = 0;
  for (const file of files) {
    const bytes = typeof file.content === 'string' ? encoder.encode(file.content)
      : new Uint8Array(await new Response(file.content).arrayBuffer());
    const entry = { name: encoder.encode(file.name), size: bytes.length, crc: crc32(bytes), offset, ...await packed(bytes) };
    parts.push(local(entry), entry.name, entry.data);
    directory.push(central(entry), entry.name);
    offset += 30 + entry.name.length + entry.data.length;
  }
  const size = directory.reduce((sum, part) => sum + part.length, 0);
  return new Blob([...parts, ...directory, end(files.length, size, offset)], { type: 'application/zip' });
}
