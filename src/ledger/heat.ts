import { BlankcheckError } from '../blankcheck-error.ts';

/** A temperature as it was typed or read off: converting it would round it. */
export interface Temperature {
  readonly value: number;
  readonly unit: 'C' | 'F';
}

/** Degrees Celsius. The degree Fahrenheit is 5/9 of it, and 32 F are 0 C, exactly (NIST SP 811, appendix B.8). */
export function celsiusOf({ value, unit }: Temperature): number {
  return unit === 'C' ? value : ((value - 32) * 5) / 9;
}

/** Degrees Fahrenheit. */
export function fahrenheitOf({ value, unit }: Temperature): number {
  return unit === 'F' ? value : (value * 9) / 5 + 32;
}

/** The same as the record schema allows. */
const MOST_DEGREES = 1000;
const LONGEST_S = 86_400;
const TEMPERATURE = /^(\d+(?:\.\d+)?)\s*(?:°|deg(?:rees)?)?\s*(c|f)?$/i;

/**
 * A temperature such as `204C`, `400F` or `204 °C`, above 0 and at most 1000. `name` says in messages which option it was.
 * @throws BlankcheckError `temperature-without-unit` for a bare number, `bad-temperature` for anything else.
 */
export function parseTemperature(text: string, name: string): Temperature {
  const match = TEMPERATURE.exec(text.trim());
  const value = Number(match?.[1]);
  if (!match || value <= 0 || value > MOST_DEGREES)
    throw new BlankcheckError(
      'bad-temperature',
      `Expected a temperature for ${name}, such as 204C or 400F, received "${text}".`,
    );
  const unit = match[2]?.toUpperCase();
  if (unit === 'C' || unit === 'F') return { value, unit };
  throw new BlankcheckError(
    'temperature-without-unit',
    `Expected a unit for ${name}, received "${text}": write ${value}C (${formatDegrees(fahrenheitOf({ value, unit: 'C' }))} F) or ${value}F (${formatDegrees(celsiusOf({ value, unit: 'F' }))} C).`,
  );
}

const TIME = /^(?:(\d+(?:\.\d+)?)\s*(?:minutes?|min|m))?\s*(?:(\d+(?:\.\d+)?)\s*(?:seconds?|sec|s))?$/i;

/**
 * Seconds of a time such as `60s`, `5min` or `1min 30s`, above 0 and at most a day.
 * @throws BlankcheckError `time-without-unit` for a bare number, `bad-time` for anything else.
 */
export function parseDwellS(text: string, name: string): number {
  const trimmed = text.trim();
  if (/^\d+(?:\.\d+)?$/.test(trimmed)) {
    const value = Number(trimmed);
    throw new BlankcheckError(
      'time-without-unit',
      `Expected a unit for ${name}, received "${text}": write ${value}s (${formatDegrees(value / 60)} min) or ${value}min (${value * 60} s).`,
    );
  }
  const match = TIME.exec(trimmed);
  const timeS = Number(match?.[1] ?? 0) * 60 + Number(match?.[2] ?? 0);
  if (!match || timeS <= 0 || timeS > LONGEST_S)
    throw new BlankcheckError(
      'bad-time',
      `Expected a time for ${name}, such as 60s, 5min or 1min30s, received "${text}".`,
    );
  return timeS;
}

/** A tenth is finer than any platen holds. */
function formatDegrees(value: number): string {
  return `${Math.round(value * 10) / 10}`;
}

/** `204.4 C (400 F)`; as it was typed first. */
export function formatTemperature(temperature: Temperature): string {
  const inC = `${formatDegrees(celsiusOf(temperature))} C`;
  const inF = `${formatDegrees(fahrenheitOf(temperature))} F`;
  return temperature.unit === 'C' ? `${inC} (${inF})` : `${inF} (${inC})`;
}
