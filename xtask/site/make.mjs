// Makes the folder that is put on a web server: a copy of the built pages, compressed copies beside the files that shrink, and the
// list of all files with their sums.
import { createHash } from 'node:crypto';
import { cpSync, readFileSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { brotliCompressSync, constants, gzipSync } from 'node:zlib';

const [from, to] = process.argv.slice(2);
/** Pictures and fonts are compressed already. */
const SHRINKS = /\.(html|js|css|wasm|json|webmanifest|svg|txt)$/;

rmSync(to, { recursive: true, force: true });
cpSync(from, to, { recursive: true });
const files = readdirSync(to, { recursive: true })
  .map(String)
  .filter((path) => statSync(join(to, path)).isFile())
  .sort();

const listed = [];
let [plain, packed] = [0, 0];
for (const path of files) {
  const bytes = readFileSync(join(to, path));
  listed.push({ path, bytes: bytes.length, sha256: createHash('sha256').update(bytes).digest('hex') });
  plain += bytes.length;
  if (!SHRINKS.test(path)) {
    packed += bytes.length;
    continue;
  }
  const br = brotliCompressSync(bytes, { params: { [constants.BROTLI_PARAM_QUALITY]: 11, [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length } });
  const gz = gzipSync(bytes, { level: 9 });
  packed += Math.min(br.length, bytes.length);
  if (br.length < bytes.length) writeFileSync(join(to, `${path}.br`), br);
  if (gz.length < bytes.length) writeFileSync(join(to, `${path}.gz`), gz);
}
writeFileSync(join(to, 'files.json'), `${JSON.stringify({ files: listed }, null, 1)}\n`);
console.log(`  ${listed.length} files, ${(plain / 1e6).toFixed(2)} MB, with brotli ${(packed / 1e6).toFixed(2)} MB`);
