/** J/(mol K). Source: BIPM, SI Brochure. */
const molarGasConstant = 8.314_463;

/**
 * How many times the resistance that a cell has at one temperature it has at another (K), by an energy of activation
 * (J/mol): the law of Arrhenius. Never less than 1: what is warmer than known is taken as known.
 */
export function coldResistance(temperature: number, asKnown: number, activation: number): number {
  if (temperature >= asKnown) return 1;
  return Math.exp((activation / molarGasConstant) * (1 / temperature - 1 / asKnown));
}

/** Shares of its charge that a cell gives: the least that is likely, the likely one and the most. */
export interface GivenCharge {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

/** The same as it was measured at a temperature (K). */
export interface ColdRow extends GivenCharge {
  readonly temperature: number;
}

/**
 * Share of its charge that a cell gives at a temperature (K): on straight lines between measured rows, which go from
 * the coldest up, and level beyond both ends.
 */
export function coldCharge(rows: readonly ColdRow[], temperature: number): GivenCharge {
  const warmer = rows.findIndex((row) => row.temperature > temperature);
  const [colder, next] = [rows.at(warmer < 0 ? -1 : warmer - 1), rows[warmer]];
  if (next === undefined || warmer === 0) return shares(next ?? colder);
  if (colder === undefined) return shares(next);
  const way = (temperature - colder.temperature) / (next.temperature - colder.temperature);
  const between = (of: 'low' | 'likely' | 'high') => colder[of] + way * (next[of] - colder[of]);
  return { low: between('low'), likely: between('likely'), high: between('high') };
}

/** Where nothing was measured a cell gives all. */
function shares(row: ColdRow | undefined): GivenCharge {
  return { low: row?.low ?? 1, likely: row?.likely ?? 1, high: row?.high ?? 1 };
}
