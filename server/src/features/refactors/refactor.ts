import type { FileEdits } from '../text-edits';

/** A change that keeps what the script says, or says the same of one pack alone. Its edits are made when asked for. */
export interface Refactor {
  readonly title: string;
  readonly kind: 'extract' | 'rewrite' | 'move';
  edits(): readonly FileEdits[];
}
