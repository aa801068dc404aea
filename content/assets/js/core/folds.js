/** Folds: a link to what is inside one opens it, and a button opens all of them to be printed. */

/** Take over the folds of the page. */
export function start() {
  reveal();
  addEventListener("hashchange", reveal);
  document.addEventListener("click", (event) => {
    const link = event.target instanceof Element ? event.target.closest("a") : null;
    if (link?.hash && link.href === location.href) reveal(); // the address does not change a second time
  });
  for (const button of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll("[data-print-all]"))) {
    button.hidden = false;
    button.addEventListener("click", printAll);
  }
}

/** Open what holds the place that the address names, or go on to the page that it has moved to. */
function reveal() {
  const place = document.getElementById(decodeURIComponent(location.hash.slice(1)));
  if (!place) return;
  const moved = place.closest(".ls-was")?.parentElement?.querySelector("a");
  if (moved) {
    location.replace(moved.href + location.hash);
    return;
  }
  if (unfold((fold) => fold.contains(place)).length) place.scrollIntoView();
}

/** Open what is folded, and say what it was. @param {(fold: Element) => boolean} [wanted] */
function unfold(wanted = () => true) {
  const folded = [...document.querySelectorAll("details:not([open])")].filter(wanted);
  for (const fold of folded) fold.setAttribute("open", "");
  return folded;
}

/** Print with everything open, and fold again what was folded. */
function printAll() {
  const folded = unfold();
  const whole = document.documentElement.classList;
  whole.add("ls-whole");
  const restore = () => {
    for (const fold of folded) fold.removeAttribute("open");
    whole.remove("ls-whole");
  };
  addEventListener("afterprint", restore, { once: true });
  print();
}
