// Numbers as people type them, and what is wrong with them in words.

const plain = number => String(Math.round(number * 1000) / 1000);

// Gives { value } or { problem }; an empty text gives neither.
export function number(text, words, minimum, maximum, whole = false) {
  const typed = text.trim();
  if (typed === '') {
    return {};
  }
  const value = /^[+-]?(\d+([.,]\d*)?|[.,]\d+)$/.test(typed.replace('−', '-')) ? Number(typed.replace('−', '-').replace(',', '.')) : NaN;
  if (!Number.isFinite(value)) {
    return { problem: `${words}: “${typed}” is no number. Type figures alone, such as ${plain(Math.round((minimum + maximum) / 2))}.` };
  }
  if (value < minimum || value > maximum) {
    return { problem: `${words}: ${typed} lies outside ${plain(minimum)} to ${plain(maximum)}. Check the unit and the decimal point.` };
  }
  if (whole && !Number.isInteger(value)) {
    return { problem: `${words}: ${typed} is not a whole number.` };
  }
  return { value };
}

// A time with the offset of this device's clock: 2026-01-12T18:05:00+01:00.
export function stamp(millis) {
  const date = new Date(millis);
  const offset = -date.getTimezoneOffset();
  const two = value => String(Math.trunc(Math.abs(value))).padStart(2, '0');
  const local = new Date(millis + offset * 60_000).toISOString().slice(0, 19);
  return `${local}${offset < 0 ? '-' : '+'}${two(offset / 60)}:${two(offset % 60)}`;
}

export const clock = millis => new Date(millis).toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' });
