/** Words that boards of nobody might use. */
export const firsts = ['amber', 'brisk', 'calm', 'dusty', 'eager', 'faint', 'gentle', 'heavy', 'jolly'];

export const seconds = ['tilt', 'spin', 'climb', 'mast', 'otter', 'quill', 'willow', 'keel', 'tern', 'pace'];

export const groupWords = ['rudder', 'kettle', 'meadow', 'harbour', 'lantern', 'thicket', 'nacelle'];

export const germanGroups = ['Fahrwerk', 'Höhenruder', 'Ausgänge'];

export const places = ['left', 'right', 'front', 'rear', 'upper', 'lower'];

export const german = ['Größe', 'Anstieg', 'Zähler', 'Schräglage', 'Höhe', 'Prüfung', 'Kreisel', 'Abstand'];

export const french = ['débit', 'hauteur', 'seuil', 'côté', 'élan', 'portée', 'géométrie', 'repère'];

export const greek = ['α', 'β', 'ω', 'Δ', 'θ', 'λ', 'ζ', 'Φ'];

/** Values that are words. */
export const choices = ['soft', 'steep', 'narrow', 'wide', 'rising', 'falling', 'spiral', 'oblique'];

export const textWords = ['calm', 'sea', 'green', 'hill', 'third', 'morning', 'über', 'Nordwind', 'été'];

export const remarkWords = ['how', 'much', 'the', 'craft', 'leans', 'before', 'it', 'settles', 'again'];

export const units = ['ms', 'Hz', 'deg', '%', 'V', 'mA', 'g', 'm', 'µs', 'deg/s', 's', 'kHz'];
