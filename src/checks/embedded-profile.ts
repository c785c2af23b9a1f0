import type { PrinterConversion } from '../conditions/printer-conversion.ts';
import type { ArtworkProfile } from '../formats/artwork.ts';
import type { CheckResult } from './define-check.ts';
import { defineCheck } from './define-check.ts';
import type { Finding } from './finding.ts';

export default defineCheck({
  id: 'embedded-profile',
  title: 'Colour profile of the file',
  reason:
    'The print-ready file is sRGB, or in the colours of your printer where it is converted for it. Numbers of another space, read as sRGB, print dull or garish.',
  source: [
    'ICC.1:2022 (profile format)',
    'sRGB: IEC 61966-2-1',
    'PNG sRGB and iCCP chunks (ISO/IEC 15948, 11.3.3)',
  ],
  codes: {
    converted: ['advice'],
    'printer-profile': ['warning'],
    unusable: ['warning'],
    'device-cmyk': ['warning'],
  },
  needs: ({ artwork, conversion }) => ({ inputs: { profile: artwork.profile, conversion } }),
  run: judge,
  phrases: {
    converted: ({ facts }) =>
      facts.convertedTo === undefined
        ? `The art is in "${facts.name}" and was converted to sRGB for the print-ready file. Colours more vivid than sRGB are flattened a little; compare the file with the art on your screen.`
        : `The art is in "${facts.name}" and was converted from it to the colours of your printer ("${facts.convertedTo}") in one step, not by way of sRGB.`,
    'printer-profile': ({ facts }) =>
      facts.samePrinter === true
        ? `The art carries the profile of the very printer that the file is for ("${facts.name}"): its colours were converted already, and are handed on as they are. Do not let the print dialog convert them again.`
        : `The art carries the profile of a printer ("${facts.name}"): it was converted for that printer once, and printing it converts it again, which spoils it. Ask for the art in sRGB; what is here was brought ${facts.convertedTo === undefined ? 'back to sRGB' : `to the colours of your printer ("${facts.convertedTo}")`} as well as it can be.`,
    unusable: ({ facts }) =>
      `The file's colour profile cannot be used (${facts.reason}); the art was read as sRGB. Export it again as sRGB, and compare its colours on your screen first.`,
    'device-cmyk': ({ facts }) =>
      `The art is CMYK${facts.name === '' ? ' without a profile' : ` ("${facts.name}")`} and was converted ${facts.convertedTo === undefined ? 'to sRGB, since desktop drivers take RGB' : `to the colours of your printer ("${facts.convertedTo}")`}.${facts.samePrinter === true ? ' It carries the profile of that very printer, but its inks are mixed anew from how they look: the mixture of black and the other inks changes.' : ''} Its colours may shift: ask for an RGB file, or compare the print-ready file with the art first.`,
  },
});

interface Inputs {
  readonly profile: ArtworkProfile;
  /** null where the driver converts. */
  readonly conversion: PrinterConversion | null;
}

function judge({ profile, conversion }: Inputs): CheckResult {
  const convertedTo = conversion ? { convertedTo: conversion.name } : {};
  const samePrinter = (sha256: string | null) => (conversion?.sha256 === sha256 ? { samePrinter: true } : {});
  const found = (code: string, severity: Finding['severity'], facts: Finding['facts']): CheckResult => ({
    findings: [{ code, severity, facts }],
  });
  switch (profile.kind) {
    case 'none':
      return {
        findings: [],
        facts: { assumed: profile.model === 'gray' ? 'gray with the sRGB curve' : 'sRGB' },
      };
    case 'srgb':
      return { findings: [], facts: { name: profile.name } };
    case 'rgb':
    case 'gray':
    case 'table':
      return found('converted', 'advice', { name: profile.name, kind: profile.kind, ...convertedTo });
    case 'printer':
      return found('printer-profile', 'warning', {
        name: profile.name,
        ...convertedTo,
        ...samePrinter(profile.sha256),
      });
    case 'cmyk':
      return found('device-cmyk', 'warning', {
        name: profile.name ?? '',
        ...convertedTo,
        ...samePrinter(profile.sha256),
      });
    case 'unusable':
      return found('unusable', 'warning', { reason: profile.reason });
  }
}
