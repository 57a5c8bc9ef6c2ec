package surfeit.http;

/**
 * Finds text that does not stand out from its ground, in the page itself: relative luminance and contrast after WCAG
 * 2.2, criterion 1.4.3 (4.5 to 1; 3 to 1 for large text, 24 px or bold 18.66 px). Disabled controls are exempt there.
 */
final class Contrast {
    static final String SCRIPT = """
        (() => {
          const rgba = (text) => { const n = text.match(/[0-9.]+/g).map(Number); return n.length < 4 ? [...n, 1] : n; };
          const part = (c) => { c /= 255; return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4; };
          const luminance = ([r, g, b]) => 0.2126 * part(r) + 0.7152 * part(g) + 0.0722 * part(b);
          const over = (top, ground) => [0, 1, 2].map((i) => top[i] * top[3] + ground[i] * (1 - top[3]));
          const ground = (element) => {
            const layers = [];
            for (let e = element; e; e = e.parentElement) {
              const paper = e.matches("svg") ? e.querySelector(":scope > rect.f-paper") : null;
              layers.push(rgba(paper ? getComputedStyle(paper).fill : getComputedStyle(e).backgroundColor));
            }
            const canvas = matchMedia("(prefers-color-scheme: dark)").matches ? [18, 18, 18] : [255, 255, 255];
            return layers.reverse().reduce((below, layer) => over(layer, below), canvas);
          };
          const faint = [];
          let looked = 0;
          const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
          for (let node = walker.nextNode(); node; node = walker.nextNode()) {
            const element = node.parentElement;
            if (!node.data.trim() || !element.checkVisibility()
                || element.closest("title, desc, :disabled, .unseen, option")) {
              continue;
            }
            looked++;
            const style = getComputedStyle(element);
            const text = rgba(element.closest("svg") ? style.fill : style.color);
            const below = ground(element);
            const [a, b] = [luminance(over(text, below)), luminance(below)].sort((x, y) => y - x);
            const ratio = (a + 0.05) / (b + 0.05);
            const size = parseFloat(style.fontSize);
            const large = size >= 24 || size >= 18.66 && Number(style.fontWeight) >= 700;
            if (ratio < (large ? 3 : 4.5)) {
              faint.push(`${ratio.toFixed(2)}: ${node.data.trim().slice(0, 40)}`);
            }
          }
          return {looked, faint};
        })()""";

    private Contrast() {
    }
}
