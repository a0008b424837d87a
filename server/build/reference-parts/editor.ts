import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import * as z from 'zod';
import { code, plain, table } from './table';

/** Of package.json, what the reference tells. */
const manifest = z.object({
  contributes: z.object({
    commands: z.array(z.object({ command: z.string(), title: z.string() })),
    keybindings: z.array(z.object({ command: z.string(), key: z.string(), mac: z.string() })),
    configuration: z.object({
      properties: z.record(
        z.string(),
        z.object({
          type: z.string(),
          default: z.unknown(),
          markdownDescription: z.string(),
          enum: z.array(z.string()).optional(),
        }),
      ),
    }),
  }),
});

/** The extension's commands and settings, in English. */
export function editorSections(root: string): readonly string[] {
  const read = (name: string): unknown => JSON.parse(readFileSync(join(root, name), 'utf8'));
  const { commands, keybindings, configuration } = manifest.parse(read('package.json')).contributes;
  const texts = z.record(z.string(), z.string()).parse(read('package.nls.json'));
  const told = (text: string) => text.replace(/%(.+?)%/g, (_, key: string) => texts[key] ?? key);
  const commandRows = commands.map(({ command, title }) => {
    const keys = keybindings.find((one) => one.command === command);
    return [told(title), code(command), keys === undefined ? '' : `${code(keys.key)}, Mac ${code(keys.mac)}`];
  });
  const settingRows = Object.entries(configuration.properties).map(([name, setting]) => [
    code(name),
    setting.enum?.map(code).join(', ') ?? setting.type,
    code(JSON.stringify(setting.default)),
    plain(told(setting.markdownDescription)),
  ]);
  return [
    `## Commands (${commandRows.length})`,
    'All under the category Propsoff. A key is pressed after the other; it counts only while the cursor is in a script.',
    table(['command', 'its name for key bindings', 'keys'], commandRows),
    `## Settings (${settingRows.length})`,
    table(['setting', 'takes', 'default', 'what it does'], settingRows),
  ];
}
