import type { Catalog } from '../../catalog/catalog';
import { withAskedFirst } from '../../sheet/asked-first';
import { type CheckedSide, type Comparison, compare } from '../../sheet/compare/compare';
import { inTheCold, variantCraft, withoutLoad } from '../../sheet/variants';
import { UsageError } from '../outcome';
import type { OneScript } from './one-script';

/** Options of commands that show a craft side by side with how it would be otherwise. */
export const variantOptions = {
  without: {
    type: 'string',
    value: 'what',
    words: ['payload'],
    about: 'side by side with the craft without its payload',
  },
  cold: {
    type: 'boolean',
    about: 'side by side with the craft in the cold, at freezing point',
  },
  if: {
    type: 'string',
    multiple: true,
    value: 'setting',
    about: 'side by side with the craft if a line said so: "craft.payload = 90 g"; may be said again',
  },
} as const;

interface VariantOptions {
  readonly without?: string | undefined;
  readonly cold?: boolean | undefined;
  readonly if?: readonly string[] | undefined;
}

export function asksVariant(values: VariantOptions): boolean {
  return values.without !== undefined || values.cold === true || values.if !== undefined;
}

/** The script as it is beside the same with all that was asked for; nothing is written. */
export function comparedVariant(one: OneScript, file: string, values: VariantOptions): Comparison {
  const { craft, view, findings, workspace } = one;
  const varied = variantCraft(craft, view.pack, settingsOf(one, values));
  if (varied === null) throw new UsageError(`${file} has no place for these settings`);
  const before: CheckedSide = { craft, pack: view.pack, findings, file };
  const check = (of: typeof craft) => workspace.check(of);
  const after = { ...before, craft: varied, findings: check(varied), file: 'otherwise' };
  return withAskedFirst(compare(before, after, check));
}

function settingsOf({ view, file }: OneScript, values: VariantOptions) {
  const settings: { readonly path: string; readonly to: string }[] = [];
  const add = (variant: { readonly path: string; readonly to: string | null } | null, otherwise: string) => {
    if (variant === null || variant.to === null) throw new UsageError(`${file.path} ${otherwise}`);
    settings.push({ path: variant.path, to: variant.to });
  };
  if (values.without !== undefined) {
    if (values.without !== 'payload')
      throw new UsageError(`--without takes payload, not "${values.without}"`);
    add(withoutLoad(view), 'carries no craft.payload: --if "craft.payload = 90 g" shows one');
  }
  if (values.cold === true)
    add(inTheCold(view), 'is as cold already: --if "craft.air-temperature = -10 degC" goes on');
  for (const text of values.if ?? []) settings.push(settingOf(text, view.catalog));
  return settings;
}

function settingOf(text: string, catalog: Catalog): { readonly path: string; readonly to: string } {
  const [path = '', ...rest] = text.split('=').map((part) => part.trim());
  const to = rest.join(' = ');
  if (path === '' || to === '' || /[\r\n]/.test(text))
    throw new UsageError(`--if takes a line such as "craft.payload = 90 g", not "${text}"`);
  if (catalog.parameter(path) === undefined) throw new UsageError(`--if: there is no setting ${path}`);
  return { path, to };
}
