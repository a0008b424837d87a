type Rgb = readonly [number, number, number];

/** Colours of the theme in force, from quiet to loud. */
export interface Ramp {
  /** From 0, quiet, to 1, loud; what lies beyond is drawn as the end. */
  at(share: number): string;
  readonly line: string;
  readonly muted: string;
}

/**
 * From close to the background over the theme's ink to its foreground: lightness goes one way all along, so that it is
 * read without seeing hues, and in print.
 */
export function ramp(near: Element): Ramp {
  const colour = (name: string, other: string) => resolved(near, `var(${name}, ${other})`);
  const ground = colour('--vscode-editor-background', 'Canvas');
  const ink = colour('--vscode-charts-blue', 'var(--link)');
  const front = colour('--vscode-foreground', 'CanvasText');
  const quiet = mixed(ground, ink, 0.1);
  return {
    at: (share) => {
      const within = Math.min(1, Math.max(0, Number.isFinite(share) ? share : 0));
      return css(within < 0.6 ? mixed(quiet, ink, within / 0.6) : mixed(ink, front, (within - 0.6) / 0.4));
    },
    line: css(colour('--line', 'currentColor')),
    muted: css(colour('--muted', 'currentColor')),
  };
}

/** What a colour comes to where it is used. */
function resolved(near: Element, colour: string): Rgb {
  const probe = document.createElement('span');
  probe.style.color = colour;
  (near.parentElement ?? document.body).append(probe);
  const text = getComputedStyle(probe).color;
  probe.remove();
  return rgbOf(text);
}

/** `rgb(26, 133, 255)`, `rgba(…)`, `color(srgb 0.1 0.5 1)` */
function rgbOf(text: string): Rgb {
  const [red = 0, green = 0, blue = 0] = (text.match(/[\d.]+(?:e-?\d+)?/g) ?? []).map(Number);
  const scale = text.startsWith('color') ? 255 : 1;
  return [red * scale, green * scale, blue * scale];
}

function mixed(one: Rgb, other: Rgb, share: number): Rgb {
  const part = (at: 0 | 1 | 2) => one[at] + share * (other[at] - one[at]);
  return [part(0), part(1), part(2)];
}

function css([red, green, blue]: Rgb): string {
  return `rgb(${Math.round(red)}, ${Math.round(green)}, ${Math.round(blue)})`;
}
