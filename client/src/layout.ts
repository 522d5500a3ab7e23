/** Tells whenever what lies in an area may have moved: it has another size, or other content.
 * @returns what ends it. */
export function watchLayout(area: Element, onChange: () => void): () => void {
  const sizes = new ResizeObserver(onChange);
  sizes.observe(area);
  const contents = new MutationObserver(onChange);
  contents.observe(area, { childList: true, subtree: true });
  return () => {
    sizes.disconnect();
    contents.disconnect();
  };
}
