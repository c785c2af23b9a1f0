import { shown } from './markup.ts';

/** The layers in order as a list that is drawn as a stack: flat presses from the bottom up, round bodies from the inside out. */
export function layerStack(layers: readonly string[], order: 'bottom-to-top' | 'body-outwards'): string {
  const items = layers.map((layer, index) => {
    const kind = /transfer/i.test(layer)
      ? ' class="transfer"'
      : /^blank|blank,|body/i.test(layer)
        ? ' class="blank"'
        : '';
    return `<li value="${index + 1}"${kind}>${shown(layer)}</li>`;
  });
  const isStack = order === 'bottom-to-top';
  return `<ol class="stack ${isStack ? 'flat' : 'round'}"${isStack ? ' reversed' : ''}>${(isStack ? items.toReversed() : items).join('')}</ol>`;
}
