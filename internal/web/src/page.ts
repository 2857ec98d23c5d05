// What a page gains when a script runs, besides partial swaps: a choice of
// theme that stays, and a print button that opens what is folded away first.
//
// Listeners sit on the document, so pieces swapped in later need no wiring.
// Nothing here needs a secure context: a yard serves plain http on its own network.

/** A theme the style sheet knows; "auto" follows the device. */
type Theme = "auto" | "light" | "dark" | "sun";

const themes: readonly Theme[] = ["auto", "light", "dark", "sun"];
const key = "scarfwright-theme";
const root = document.documentElement;

function isTheme(s: string | null | undefined): s is Theme {
  return themes.some((t) => t === s);
}

/** stored returns the theme chosen on this device, "auto" when none can be read. */
function stored(): Theme {
  try {
    const s = localStorage.getItem(key);
    return isTheme(s) ? s : "auto";
  } catch {
    return "auto"; // storage may be switched off; the page still works
  }
}

function apply(theme: Theme): void {
  if (theme === "auto") {
    delete root.dataset["theme"];
  } else {
    root.dataset["theme"] = theme;
  }
  for (const b of document.querySelectorAll<HTMLElement>("[data-set-theme]")) {
    b.setAttribute("aria-pressed", String(b.dataset["setTheme"] === theme));
  }
}

function choose(theme: Theme): void {
  try {
    localStorage.setItem(key, theme);
  } catch {
    // The choice then lasts until the page is left.
  }
  apply(theme);
}

// .needs-script elements (theme switch, print button) show from here on.
root.classList.add("has-script");
apply(stored());
document.addEventListener("DOMContentLoaded", () => apply(stored()));

document.addEventListener("click", (event) => {
  if (!(event.target instanceof Element)) return;
  const button = event.target.closest<HTMLElement>("[data-set-theme], [data-print]");
  if (button === null) return;
  const theme = button.dataset["setTheme"];
  if (isTheme(theme)) choose(theme);
  if (button.dataset["print"] !== undefined) window.print();
});

// A folded-away working or caution must not be missing from the paper.
let unfolded: HTMLDetailsElement[] = [];
window.addEventListener("beforeprint", () => {
  unfolded = [...document.querySelectorAll<HTMLDetailsElement>("details:not([open])")];
  for (const d of unfolded) d.open = true;
});
window.addEventListener("afterprint", () => {
  for (const d of unfolded) d.open = false;
  unfolded = [];
});
