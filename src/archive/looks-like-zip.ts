/** True when the bytes begin as a ZIP archive does: a local file header, or the end record of an empty one. */
export function looksLikeZip(bytes: Uint8Array): boolean {
  const magic = String.fromCharCode(...bytes.subarray(0, 4));
  return magic === 'PK\x03\x04' || magic === 'PK\x05\x06';
}
