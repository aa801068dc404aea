/** Where this site is, as paper tells it. Pure. */

/**
 * The address of this site, for the codes on the sheets; empty where no other phone can open it.
 * @param {string} script the address of a script of this folder
 */
export function siteOf(script) {
  const site = new URL("../../../", script);
  const alone = /^(localhost|127\.|\[::1\])/.test(site.hostname);
  return site.protocol.startsWith("http") && !alone ? site.href : "";
}
