import { config } from 'zod/mini';

// The library can turn models into program text and run that: ours are read without, whatever they hold.
config({ jitless: true });

export * from 'zod/mini';
