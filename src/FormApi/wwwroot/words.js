// Numbers and words as they are shown. Figures are rounded to what a person can use; nothing is calculated.

/** @param {number} value @param {Intl.NumberFormatOptions} options */
const shown = (value, options) => new Intl.NumberFormat("en", { useGrouping: "min2", ...options }).format(value);

/** @param {number | null | undefined} value A length. @param {string} units */
export const length = (value, units) => value == null ? "–" : shown(value, { maximumFractionDigits: units === "in" ? 3 : 2 });

/** @param {number} value A length to set on a scale, with the digits that the words of a step have. @param {string} units */
export const onScale = (value, units) => shown(value, { maximumFractionDigits: (units === "in" ? 1 : 0) + (value < 100 ? 2 : value < 1000 ? 1 : 0), useGrouping: false });

/** @param {number | null | undefined} value An angle [°]. */
export const degrees = value => value == null ? "–" : shown(value, { minimumFractionDigits: 1, maximumFractionDigits: 1 }) + "°";

/** @param {number | null | undefined} value A setting of the stop [°], with the digits that its steps have. */
export const setting = value => value == null ? "–" : shown(value, { maximumFractionDigits: 3 }) + "°";

/** @param {number | null | undefined} value A force, a mass, a time or money: three digits that count. */
export const about = value => value == null ? "–" : shown(value, { maximumSignificantDigits: 3 });

/** @param {number | null | undefined} value Money. */
export const money = value => value == null ? "–" : shown(value, Math.abs(value) < 100 ? { minimumFractionDigits: 2, maximumFractionDigits: 2 } : { maximumFractionDigits: 0 });

/** @param {number | null | undefined} value A height of the facets. @param {string} units */
export const ripple = (value, units) => value == null ? "not known" : shown(value, { maximumFractionDigits: units === "in" ? 4 : 2 });

/** @param {unknown} value A number in a field: as exact as anybody types. */
export const inField = value => typeof value === "number" ? shown(value, { maximumFractionDigits: 5, useGrouping: false }) : value == null ? "" : String(value);

/** @param {string} text */
export const sentence = text => text.charAt(0).toUpperCase() + text.slice(1);

/** @type {Record<string, string>} */
export const verdicts = { ready: "Ready", attention: "Look first", "cannot-be-made": "Cannot be made" };

/** @param {string} units */
export const forceUnit = units => units === "in" ? "lbf" : "N";

/** @param {string} units */
export const massUnit = units => units === "in" ? "lb" : "kg";
