/**
 * Only in the preview: the page loads itself again when something it may show has changed, and what the check of the
 * whole library found is shown as soon as it is known.
 */

/** @returns {HTMLElement | null} */
const region = () => document.querySelector("[data-ls-preview]");

const events = new EventSource("/preview/events");

events.addEventListener("pages", (event) => {
  if (region()?.dataset.version !== event.data) location.reload();
});

events.addEventListener("findings", async () => {
  const shown = region();
  if (!shown) return;
  const answer = await fetch(`/preview/findings?${encodeURIComponent(shown.dataset.lsPreview ?? "")}`);
  if (answer.ok) shown.outerHTML = await answer.text();
});
