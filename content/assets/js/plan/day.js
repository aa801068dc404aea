/** The day on this device's calendar. */
export function today() {
  const now = new Date();
  const two = (/** @type {number} */ number) => String(number).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
