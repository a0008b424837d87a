// What any checker of files has to do at least: read each and look at each of its characters.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const [folder] = process.argv.slice(2);
let sum = 0;
for (const name of readdirSync(folder)) {
  const text = readFileSync(join(folder, name), 'utf8');
  for (let at = 0; at < text.length; at += 1) sum += text.charCodeAt(at);
}
console.log(sum);
