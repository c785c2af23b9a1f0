/** File name extensions that the formats we read are usually saved under, in small letters without the dot. */
const EXTENSIONS: ReadonlySet<string> = new Set([
  ...['png', 'apng'],
  ...['jpg', 'jpeg', 'jpe', 'jfif'],
  ...['tif', 'tiff'],
  ...['svg', 'svgz'],
  ...['webp', 'avif', 'gif'],
]);

/**
 * True when a file of this name claims to be an artwork: then an empty or damaged one is an unreadable artwork and no
 * stranger. What it truly is, only its bytes tell (`sniffFormat`).
 */
export function hasArtworkName(name: string): boolean {
  const dot = name.lastIndexOf('.');
  return dot >= 0 && EXTENSIONS.has(name.slice(dot + 1).toLowerCase());
}
