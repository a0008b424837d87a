import type { RecordingReport } from '../../server/src/recording/report';

const withheld = { told: null, reason: 'Not logged.', advice: 'Log it.' } as const;

/** What a recording says of which nothing can be told, but for what is given. */
export function reportWith(given: Partial<RecordingReport>): RecordingReport {
  return {
    name: 'dusk.csv',
    flight: 1,
    flights: 1,
    seconds: 30,
    rate: 1000,
    isSimulated: false,
    leftOut: [],
    findings: [],
    noise: withheld,
    noiseMaps: withheld,
    motors: withheld,
    pack: withheld,
    hover: withheld,
    link: withheld,
    responses: withheld,
    gains: withheld,
    proposals: [],
    ...given,
  };
}
