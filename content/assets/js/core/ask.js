/** Asking for a line of text. What looks like a code is warned of, and only kept when asked a second time. */

import { ask as message } from "../messages/core.js";
import { button, field, form, h } from "./dom.js";
import { listed } from "./message.js";
import { clean, looksLikeCode } from "./words.js";

/**
 * Read several lines of text at once, and warn where one looks like a code.
 * @param {(words: string) => void} warn says it; nothing, once all is well
 * @returns {(inputs: HTMLInputElement[]) => string[] | null} the texts, or null where it has warned
 */
export function reader(warn) {
  let warned = "";
  return (inputs) => {
    const texts = inputs.map((input) => clean(input.value, input.maxLength > 0 ? input.maxLength : 500));
    const named = texts.map((text, index) => ({ text, name: inputs[index].labels?.[0]?.textContent?.trim() ?? "" }));
    const found = named.filter(({ text }) => looksLikeCode(text));
    const suspect = found.map(({ text }) => text).join("\n");
    if (suspect && suspect !== warned) {
      warned = suspect;
      const names = found.map(({ name }) => name).filter(Boolean);
      const many = inputs.length > 1 && names.length > 0;
      warn(many ? message.codeWarningIn({ fields: listed(names, "unit") }) : message.codeWarning());
      return null;
    }
    warn("");
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
  const read = reader((said) => {
    warning.textContent = said;
  });
  const submit = async () => {
    const texts = read([input]);
    if (!texts) return;
    if (!texts[0]) warning.textContent = message.writeFirst({ asked: words });
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
    const keep = button(message.leave(), leave, { class: "ls-button ls-quiet" });
    place.replaceChildren(h("p", { role: "alert" }, question()), h("div", { class: "ls-tools" }, keep, sure));
    keep.focus();
  };
  rest();
  return place;
}
