/** What answers requests that wait for a person to open or start something: loaded with the first of them. */
export * from './bench-card';
export * from './board';
export * from './compare';
export * from './flight';
export * from './sheet';
