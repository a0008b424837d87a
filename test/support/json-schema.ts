import assert from 'node:assert/strict';
import { Ajv } from 'ajv';
import Draft04 from 'ajv-draft-04';
import addFormats from 'ajv-formats';

/** Says where a value does not fit, as lines; throws nothing away. */
type Validator = (value: unknown) => readonly string[];

const compiled = new Map<string, Validator>();

/** A validator for a JSON Schema of draft 7, or of draft 4 where the schema says so. Equal schemas share one. */
export function validatorFor(schema: object): Validator {
  const key = JSON.stringify(schema);
  const validator = compiled.get(key) ?? newValidator(schema);
  compiled.set(key, validator);
  return validator;
}

function newValidator(schema: object): Validator {
  const isOld = '$schema' in schema && String(schema.$schema).includes('draft-04');
  // The standard's own schema holds a pattern that is none for Unicode.
  const ajv = isOld
    ? new Draft04({ strict: false, allErrors: true, unicodeRegExp: false })
    : new Ajv({ allErrors: true });
  addFormats(ajv);
  const validate = ajv.compile(schema);
  return (value) => {
    validate(value);
    const errors = (validate.errors ?? []).map(({ instancePath, message }) => ({ instancePath, message }));
    // The deepest first: of a choice that nothing fits, it is the nearest miss.
    errors.sort((one, other) => other.instancePath.length - one.instancePath.length);
    return errors.map(({ instancePath, message }) => `${instancePath} ${message ?? ''}`);
  };
}

export function assertFits(validator: Validator, value: unknown): void {
  assert.deepEqual(validator(value).slice(0, 5), []);
}
