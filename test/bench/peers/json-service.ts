import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { Schema } from './schema';

/** As much of the service as is measured: it is installed only when it is, so its own types may not be there. */
interface JsonServiceModule {
  getLanguageService(options: object): JsonService;
  readonly TextDocument: {
    create(uri: string, languageId: string, version: number, text: string): object;
  };
}

interface JsonService {
  configure(settings: {
    readonly validate: boolean;
    readonly schemas: readonly {
      readonly uri: string;
      readonly fileMatch: readonly string[];
      readonly schema: Schema;
    }[];
  }): void;
  parseJSONDocument(document: object): object;
  doValidation(document: object, parsed: object): Promise<readonly object[]>;
}

/** The newest general-purpose service for JSON. */
export function jsonServiceModule(): JsonServiceModule {
  const load = createRequire(join(__dirname, '../installed/package.json'));
  return load('vscode-json-languageservice') as JsonServiceModule;
}
