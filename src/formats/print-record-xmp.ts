import sax from 'sax';
import type { Intent } from '../icc/profile.ts';
import type { PrintRecord } from './print-record.ts';

/** Namespace of the record's properties; the number changes when a property changes its meaning. */
export const PRINT_RECORD_NAMESPACE = 'urn:x-blankcheck:print-record:1#';

const INTENTS: readonly Intent[] = ['perceptual', 'relative', 'saturation', 'absolute'];

/** The record as an XMP packet, marked read-only since files carry checksums. @see ISO 16684-1:2019, 7.3 (packet), 7.4 (RDF) */
export function writePrintRecordXmp(record: PrintRecord): string {
  const properties = toProperties(record).map(
    ([name, value]) => `   <blankcheck:${name}>${escapeXml(value)}</blankcheck:${name}>`,
  );
  return [
    '<?xpacket begin="\uFEFF" id="W5M0MpCehiHzreSzNTczkc9d"?>',
    '<x:xmpmeta xmlns:x="adobe:ns:meta/">',
    ' <rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">',
    '  <rdf:Description rdf:about=""',
    '    xmlns:xmp="http://ns.adobe.com/xap/1.0/"',
    `    xmlns:blankcheck="${PRINT_RECORD_NAMESPACE}">`,
    `   <xmp:CreatorTool>${escapeXml(`${record.program} ${record.version}`)}</xmp:CreatorTool>`,
    ...properties,
    '  </rdf:Description>',
    ' </rdf:RDF>',
    '</x:xmpmeta>',
    '<?xpacket end="r"?>',
  ].join('\n');
}

/**
 * The record in an XMP packet, whichever prefix and form (elements or attributes) another program gave it.
 * null when a property is missing or is not what it should be.
 */
export function parsePrintRecordXmp(xml: string): PrintRecord | null {
  try {
    return fromProperties(readProperties(xml));
  } catch {
    // Not well-formed: nothing that a program would have written around our record.
    return null;
  }
}

function toProperties(record: PrintRecord): (readonly [string, string])[] {
  return [
    ...(record.kind === undefined ? [] : [['Kind', record.kind] as const]),
    ['Version', record.version],
    ['SourceSha256', record.sourceSha256],
    ['PixelSha256', record.pixelSha256],
    ['BlankId', record.blankId],
    ['WidthMm', String(record.widthMm)],
    ['HeightMm', String(record.heightMm)],
    ['Ppi', String(record.ppi)],
    ...toDensityProperties(record),
    ['Mirrored', writeBoolean(record.mirrored)],
    ...toPrinterProperties(record),
  ];
}

function toDensityProperties({ densityPpi }: PrintRecord): (readonly [string, string])[] {
  if (!densityPpi) return [];
  return [
    ['DensityXPpi', String(densityPpi.x)],
    ['DensityYPpi', String(densityPpi.y)],
  ];
}

function toPrinterProperties({ printerProfile }: PrintRecord): (readonly [string, string])[] {
  if (!printerProfile) return [];
  return [
    ['PrinterProfileSha256', printerProfile.sha256],
    ['PrinterProfileName', printerProfile.name],
    ...(printerProfile.intent ? [['Intent', printerProfile.intent] as const] : []),
    ...(printerProfile.blackPointCompensation === undefined
      ? []
      : [['BlackPointCompensation', writeBoolean(printerProfile.blackPointCompensation)] as const]),
  ];
}

/** @see ISO 16684-1:2019, 8.2.1.1 */
function writeBoolean(value: boolean): string {
  return value ? 'True' : 'False';
}

function readPrinter(text: (name: string) => string): PrintRecord['printerProfile'] {
  const sha256 = text('PrinterProfileSha256');
  if (!/^[0-9a-f]{64}$/.test(sha256)) return undefined;
  const intent = INTENTS.find((each) => each === text('Intent'));
  const compensated = text('BlackPointCompensation');
  return {
    sha256,
    name: text('PrinterProfileName'),
    ...(intent ? { intent } : {}),
    ...(/^(?:true|false)$/i.test(compensated) ? { blackPointCompensation: /^true$/i.test(compensated) } : {}),
  };
}

function fromProperties(properties: ReadonlyMap<string, string>): PrintRecord | null {
  const text = (name: string) => properties.get(name)?.trim() ?? '';
  const length = (name: string) => (/^[\d.e+-]+$/.test(text(name)) ? Number(text(name)) : Number.NaN);
  const hashes = [text('SourceSha256'), text('PixelSha256')];
  const lengths = [length('WidthMm'), length('HeightMm'), length('Ppi')];
  const whole =
    text('Version') !== '' &&
    text('BlankId') !== '' &&
    hashes.every((hash) => /^[0-9a-f]{64}$/.test(hash)) &&
    lengths.every((value) => value > 0 && Number.isFinite(value)) &&
    /^(?:true|false)$/i.test(text('Mirrored'));
  if (!whole) return null;
  const printerProfile = readPrinter(text);
  return {
    ...(text('Kind') === 'proof' ? { kind: 'proof' } : {}),
    program: 'blankcheck',
    version: text('Version'),
    sourceSha256: text('SourceSha256'),
    pixelSha256: text('PixelSha256'),
    blankId: text('BlankId'),
    widthMm: length('WidthMm'),
    heightMm: length('HeightMm'),
    ppi: length('Ppi'),
    mirrored: /^true$/i.test(text('Mirrored')),
    ...(length('DensityXPpi') > 0 && length('DensityYPpi') > 0
      ? { densityPpi: { x: length('DensityXPpi'), y: length('DensityYPpi') } }
      : {}),
    ...(printerProfile ? { printerProfile } : {}),
  };
}

/** The properties of our namespace by their local names. @throws where the XML is not well-formed */
function readProperties(xml: string): Map<string, string> {
  const properties = new Map<string, string>();
  const parser = sax.parser(true, { xmlns: true });
  let open: string | null = null;
  parser.onopentag = (tag) => {
    const { uri, local, attributes } = tag as sax.QualifiedTag;
    open = uri === PRINT_RECORD_NAMESPACE ? local : null;
    if (open !== null) properties.set(open, '');
    for (const attribute of Object.values(attributes))
      if (attribute.uri === PRINT_RECORD_NAMESPACE) properties.set(attribute.local, attribute.value);
  };
  const readText = (text: string) => {
    if (open !== null) properties.set(open, properties.get(open) + text);
  };
  parser.ontext = readText;
  parser.oncdata = readText;
  parser.onclosetag = () => {
    open = null;
  };
  parser.onerror = (error) => {
    throw error;
  };
  parser.write(xml).close();
  return properties;
}

/** XML 1.0 has no way to write most control characters: they become spaces. */
function escapeXml(text: string): string {
  return text
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/\p{Cc}/gu, ' ');
}
