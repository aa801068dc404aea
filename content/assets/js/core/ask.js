/** Asking for a line of text. What looks like a code is warned of, and only kept when asked a second time. */
import { button, field, form, h } from "./dom.js";
import { clean, looksLikeCode } from "./words.js";

export const CODE_WARNING =
  "This looks as if it held a code. A code never belongs in a record: take it out. If it is none, press again.";

/**
 * Read several lines of text at once, and warn where one looks like a code.
 * @param {HTMLElement} warning where to say it
 * @returns {(inputs: HTMLInputElement[]) => string[] | null} the texts, or null where it has warned
 */
export function reader(warning) {
  let warned = "";
  return (inputs) => {
    const texts = inputs.map((input) => clean(input.value, input.maxLength > 0 ? input.maxLength : 500));
    const named = texts.map((text, index) => ({ text, name: inputs[index].labels?.[0]?.textContent?.trim() ?? "" }));
    const found = named.filter(({ text }) => looksLikeCode(text));
    const suspect = found.map(({ text }) => text).join("\n");
    if (suspect && suspect !== warned) {
      warned = suspect;
      const names = found
        .map(({ name }) => name)
        .filter(Boolean)
        .join(", ");
      warning.textContent = inputs.length > 1 && names ? `${names}: ${CODE_WARNING}` : CODE_WARNING;
      return null;
    }
    warning.textContent = "";
    return texts;
  };
}

/**
 * A form of one line.
 * @param {string} words what is asked for
 * @param {string} press words of its button
 * @param {(text: string) => Promise<unknown>} save gives back false where it was not saved
 */
export function ask(words, press, save) {
  const input = h("input", { type: "text", maxlength: 500, autocomplete: "off", enterkeyhint: "done" });
  const warning = h("p", { class: "ls-warn", role: "alert" });
  const read = reader(warning);
  const submit = async () => {
    const texts = read([input]);
    if (!texts) return;
    if (!texts[0]) warning.textContent = `${words}: write it first.`;
    else {
      input.value = ""; // the place may be shown anew before this returns
      if ((await save(texts[0])) === false) input.value = texts[0];
    }
  };
  return form(
    "ls-ask",
    submit,
    field(words, input),
    warning,
    h("button", { type: "submit", class: "ls-button" }, press),
  );
}

/**
 * Something that needs a second action: the first press asks, the second does it.
 * @param {string} words of the first button
 * @param {() => string} question
 * @param {string} yes
 * @param {() => unknown} act
 * @param {() => void} [over] called when it was done or left
 */
export function secondPress(words, question, yes, act, over = () => {}) {
  const place = h("div", { class: "ls-second" });
  const rest = () => place.replaceChildren(button(words, asked, { class: "ls-button ls-quiet" }));
  const asked = () => {
    const sure = button(yes, async () => {
      await act();
      rest();
      over();
    });
    const leave = () => {
      rest();
      place.querySelector("button")?.focus();
      over();
    };
    const keep = button("No, leave it", leave, { class: "ls-button ls-quiet" });
    place.replaceChildren(h("p", { role: "alert" }, question()), h("div", { class: "ls-tools" }, keep, sure));
    keep.focus();
  };
  rest();
  return place;
}
