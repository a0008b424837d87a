import type { Answered, AskedKind, FromLearn, LearnRequests, ToLearn } from './messages';

interface EditorApi {
  postMessage(message: FromLearn): void;
}

declare function acquireVsCodeApi(): EditorApi;

const api = acquireVsCodeApi();

type Answers = { readonly [K in AskedKind]: Map<number, (answer: Answered[K]) => void> };

const waiting: Answers = {
  say: new Map(),
  choices: new Map(),
  form: new Map(),
  hardware: new Map(),
  lesson: new Map(),
  measured: new Map(),
};
let asked = 0;

export function send(message: Extract<FromLearn, { kind: 'ready' | 'open' }>): void {
  api.postMessage(message);
}

/** Asks the extension; it answers in the order in which it was asked. */
export function ask<K extends AskedKind>(to: K, what: LearnRequests[K]): Promise<Answered[K]> {
  asked += 1;
  const id = asked;
  return new Promise((resolve) => {
    waiting[to].set(id, resolve);
    // The compiler does not tie the kinds of a mapped union together.
    api.postMessage({ kind: 'ask', to, id, asked: what } as FromLearn);
  });
}

function answered<K extends AskedKind>(to: K, id: number, answer: Answered[K]): void {
  waiting[to].get(id)?.(answer);
  waiting[to].delete(id);
}

/** What comes unasked. */
export function onMessage(take: (message: Exclude<ToLearn, { kind: 'answer' }>) => void): void {
  window.addEventListener('message', ({ data }: MessageEvent<ToLearn>) => {
    if (data.kind === 'answer') answered(data.to, data.id, data.answer);
    else take(data);
  });
}
