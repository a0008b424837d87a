/** What to fly so that the answer shows. The cautions are those of the job: rules decide, nothing here is safe by itself. */
export const flySteps =
  'With propellers and battery checked, room around and an observer beside you, give small quick stick steps, to some 100 deg/s, to either side on this axis alone, in a calm hover, for ten seconds or more.';
