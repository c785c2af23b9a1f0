import { SETTINGS, type Setting } from './setting-table.ts';

/** The JSON Schema of a settings file (2020-12), for editors; it ships as seeds/schema/config.schema.json. */
export function settingsSchema(): object {
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: 'Settings of blankcheck (blankcheck.config.json)',
    type: 'object',
    properties: {
      $schema: { type: 'string' },
      ...Object.fromEntries(SETTINGS.map((setting) => [setting.name, schemaOf(setting)])),
    },
    additionalProperties: false,
  };
}

function schemaOf({ kind, choices, help, byDefault }: Setting): object {
  const text = { type: 'string', minLength: 1 };
  const value =
    kind === 'flag' ? { type: 'boolean' } : kind === 'texts' ? { type: 'array', items: text } : text;
  return {
    description: help,
    ...value,
    ...(choices && { enum: choices }),
    ...(byDefault !== undefined && { default: byDefault }),
  };
}
