const drawn = new Set(["svg", "g", "defs", "use", "symbol", "path", "rect", "ellipse", "polygon", "polyline", "circle", "line", "text", "tspan", "title", "desc"]);

const styles = /<style[^>]*>[\s\S]*?<\/style>/g;

/** A page of the engraver as part of the document: what is not drawn, scripts above all, is left out. Its own styles give
 * way to ours, so that the ink can follow the light; they go before it is parsed, since the page allows none of them. */
export function engraved(svg: string): SVGSVGElement | null {
  loadMusicFace(svg);
  const parsed = new DOMParser().parseFromString(svg.replace(styles, ""), "image/svg+xml").documentElement;
  if (parsed.localName !== "svg") {
    return null;
  }
  for (const element of [...parsed.querySelectorAll("*")]) {
    if (!drawn.has(element.localName)) {
      element.remove();
      continue;
    }
    for (const { name, value } of [...element.attributes]) {
      const isForeign = name.endsWith("href") && !value.startsWith("#");
      if (name.startsWith("on") || name === "style" || isForeign) {
        element.removeAttribute(name);
      }
    }
  }
  return document.importNode(parsed, true) as unknown as SVGSVGElement;
}

let hasMusicFace = false;

// Every page that writes notes among words (such as a tempo) carries the face for them.
function loadMusicFace(svg: string) {
  const face = hasMusicFace
    ? null
    : /font-family:\s*'(\w+)'[^}]*?url\((data:application\/font-woff2;[^)]+)\)/.exec(svg);
  if (face) {
    hasMusicFace = true;
    document.fonts.add(new FontFace(face[1]!, `url(${face[2]!})`));
  }
}
