// A package that was handed over (unpacked), looked at by validators from a registry:
//   npm install && node check.mjs FOLDER
// Data Package: the library datapackage (profile of version 1; no library of the registry has that of version 2, which extends it), and every row of every table cast by tableschema.
// Times bear their offset, as version 2 allows (XML Schema dateTime) and version 1 does not: they are cast as format "any".
// RO-Crate: the library ro-crate, its own validator. JCAMP-DX: jcampconverter. Exit 0 when all of them accept it.
import fs from 'node:fs';
import path from 'node:path';
import crypto from 'node:crypto';
import { createRequire } from 'node:module';
(await import('node:events')).EventEmitter.defaultMaxListeners = 0;
const require = createRequire(import.meta.url);
const { Package } = require('datapackage');
const { Schema, Table } = require('tableschema');
const { Validator } = require('ro-crate/lib/validator.js');
const { convert } = await import('jcampconverter');

const folder = path.resolve(process.argv[2] ?? '.');
let bad = 0;
const say = (ok, what) => { if (!ok) bad++; console.log(`${ok ? 'ok ' : 'NOT'} ${what}`); };

for (const name of ['datapackage.json', 'plain/datapackage.json']) {
  const at = path.join(folder, name), base = path.dirname(at);
  const descriptor = JSON.parse(fs.readFileSync(at, 'utf8'));
  const pack = await Package.load(descriptor, { basePath: base });
  say(pack.valid, `${name}: datapackage accepts it${pack.valid ? '' : ': ' + pack.errors.map(e => e.message).join('; ')}`);
  let tables = 0, rows = 0, faults = [];
  for (const resource of descriptor.resources) {
    const file = path.join(base, resource.path), bytes = fs.readFileSync(file);
    if (bytes.length !== resource.bytes || 'sha256:' + crypto.createHash('sha256').update(bytes).digest('hex') !== resource.hash)
      faults.push(`${resource.path}: bytes or hash`);
    if (!resource.schema)
      continue;
    tables++;
    for (const field of resource.schema.fields.filter(f => f.type === 'datetime'))
      field.format = 'any';
    const schema = await Schema.load(resource.schema, { strict: true });
    if (!schema.valid)
      faults.push(`${resource.path}: ${schema.errors.map(e => e.message).join('; ')}`);
    const table = await Table.load(file, { schema: resource.schema });
    const stream = await table.iter({ keyed: false, stream: false, forceCast: true });
    for (let next = await stream.next(); !next.done; next = await stream.next()) {
      rows++;
      if (next.value instanceof Error && faults.length < 12)
        faults.push(`${resource.path}: ${next.value.errors?.map(e => e.message).join('; ') ?? next.value.message}`);
    }
  }
  say(faults.length === 0, `${name}: ${descriptor.resources.length} resources with bytes and hash, ${tables} tables, ${rows} rows cast${faults.length ? ': ' + faults.join(' | ') : ''}`);
}

const json = JSON.parse(fs.readFileSync(path.join(folder, 'ro-crate-metadata.json'), 'utf8'));
const files = new Map(fs.readdirSync(folder, { recursive: true, withFileTypes: true }).filter(f => f.isFile()).map(f => [path.relative(folder, path.join(f.parentPath, f.name)).split(path.sep).join('/'), {}]));
const validator = new Validator();
validator.parseJSON(JSON.stringify(json));
validator.rootDataEntity();
validator.checkFiles(Object.fromEntries([...files.keys()].map(f => [f.split('/').map(encodeURIComponent).join('/'), { exists: true }])), validator.crate);
const errors = validator.results.filter(r => r.status === 'error');
const crate = validator.crate;
say(errors.length === 0, `ro-crate: ${[...crate.entities()].length} entities, ${errors.length} errors, ${validator.results.filter(r => r.status === 'warning').length} warnings; what it looks up in the web was not asked${errors.length ? ': ' + JSON.stringify(errors.slice(0, 4)) : ''}`);
const parts = crate.rootDataset.hasPart.map(p => decodeURIComponent(p['@id']));
const own = [...files.keys()].filter(f => f !== 'ro-crate-metadata.json' && f !== 'SHA256SUMS');
say(parts.every(p => files.has(p)) && own.every(f => parts.includes(f)), `ro-crate: its ${parts.length} parts are the files of the folder, no more and no less`);

let spectra = 0, wrong = [];
for (const name of files.keys()) {
  if (!name.endsWith('.jdx'))
    continue;
  const text = fs.readFileSync(path.join(folder, name), 'utf8');
  const told = Number(/##NPOINTS=(\d+)/.exec(text)[1]);
  const read = convert(text, { keepRecordsRegExp: /.*/ }).flatten[0];
  spectra++;
  if (read.spectra[0]?.data.x.length !== told)
    wrong.push(`${name}: ${read.spectra[0]?.data.x.length} of ${told} points`);
}
say(wrong.length === 0, `jcampconverter: ${spectra} spectra ${wrong.join('; ')}`);
process.exit(bad === 0 ? 0 : 1);
