using System.Text.Json;
using Microsoft.Playwright;

namespace Stridewright.Web.Tests;

/// <summary>What overlaps, sticks out or is cut off on a page: lines of text among each other and with what is written in, by
/// the boxes in which the browser drew them.</summary>
internal static class Tidy
{
    private const string Look = """
        () => {
          const found = [];
          // What lies over the music lies there on purpose, and a slip over what is marked there.
          const over = (element) => {
            let layer = element.closest(".spot");
            for (let at = layer ? null : element; at && at !== document.body; at = at.parentElement) {
              if (["absolute", "fixed", "sticky"].includes(getComputedStyle(at).position)) layer = at;
            }
            return layer;
          };
          const seen = (element) => element.checkVisibility({ opacityProperty: true, visibilityProperty: true });
          const boxes = [];
          const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
          while (walk.nextNode()) {
            const node = walk.currentNode;
            const parent = node.parentElement;
            if (!node.data.trim() || !seen(parent) || parent.closest("svg, script, style, select, textarea, noscript")) continue;
            const range = document.createRange();
            range.selectNodeContents(node);
            for (const box of range.getClientRects()) {
              // Words for ears only are a pixel large.
              if (box.width > 1 && box.height > 1 && !parent.closest("[data-ears]") && parent.getBoundingClientRect().width > 1) {
                boxes.push({ box, element: parent, name: node.data.trim().slice(0, 40) });
              }
            }
          }
          for (const element of document.querySelectorAll("input, select, textarea, canvas, svg")) {
            const box = element.getBoundingClientRect();
            if (seen(element) && box.width > 1 && box.height > 1 && !element.parentElement.closest("svg")) {
              boxes.push({ box, element, name: `<${element.tagName.toLowerCase()}>` });
              const words = element.tagName === "INPUT" && ["text", "search", "number"].includes(element.type) ? element.value || element.placeholder : "";
              const style = getComputedStyle(element);
              const room = element.clientWidth - parseFloat(style.paddingLeft) - parseFloat(style.paddingRight);
              const drawn = element.value ? style : getComputedStyle(element, "::placeholder");
              if (words && widthOf(words, drawn) > room + 1) found.push(`cut in its field: ${words}`);
            }
          }
          const wide = document.documentElement.clientWidth;
          for (const { box, element, name } of boxes) {
            if (box.left < -1 || box.right > wide + 1) {
              if (!scrolls(element)) found.push(`sticks out: ${name}`);
            }
            for (let at = element.parentElement; at && at !== document.body; at = at.parentElement) {
              const style = getComputedStyle(at);
              const edge = at.getBoundingClientRect();
              if (style.overflowX === "hidden" || style.overflowX === "clip") {
                if (edge.width > 1 && (box.right > edge.right + 2 || box.left < edge.left - 2)) found.push(`cut at a side: ${name}`);
              }
              if (style.overflowY === "hidden" || style.overflowY === "clip") {
                if (edge.height > 1 && (box.bottom > edge.bottom + 3 || box.top < edge.top - 3)) found.push(`cut above or below: ${name}`);
              }
            }
          }
          function widthOf(words, style) {
            const pen = document.createElement("canvas").getContext("2d");
            pen.font = `${style.fontStyle} ${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
            return pen.measureText(words).width;
          }
          function scrolls(element) {
            for (let at = element; at && at !== document.body; at = at.parentElement) {
              if (["auto", "scroll"].includes(getComputedStyle(at).overflowX) && at.scrollWidth > at.clientWidth) return true;
            }
            return false;
          }
          boxes.sort((a, b) => a.box.top - b.box.top);
          for (let i = 0; i < boxes.length; i++) {
            for (let j = i + 1; j < boxes.length && boxes[j].box.top < boxes[i].box.bottom; j++) {
              const [a, b] = [boxes[i], boxes[j]];
              if (a.element === b.element || a.element.contains(b.element) || b.element.contains(a.element)) continue;
              const width = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left);
              const height = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top);
              // Boxes of type reach above and below the letters.
              if (width <= 2 || height <= 0.4 * Math.min(a.box.height, b.box.height, 20)) continue;
              if (over(a.element) !== over(b.element)) continue;
              found.push(`overlap: ${a.name} / ${b.name}`);
            }
          }
          return JSON.stringify([...new Set(found)].slice(0, 20));
        }
        """;

    /// <summary>In words; empty: nothing.</summary>
    public static async Task<IReadOnlyList<string>> Faults(IPage desk) =>
        JsonSerializer.Deserialize<List<string>>(await desk.EvaluateAsync<string>(Look))!;
}
