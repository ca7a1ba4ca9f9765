// A field of a form, and what is wrong with it in words beside it.

export const find = selector => document.querySelector(selector);

const usual = new WeakMap();

export function tell(input, problem) {
  const words = document.getElementById(`${input.id}-words`);
  if (!usual.has(words)) {
    usual.set(words, [...words.childNodes]);
  }
  if (problem) {
    input.setAttribute('aria-invalid', 'true');
    words.className = 'bad';
    words.textContent = problem;
  } else {
    input.removeAttribute('aria-invalid');
    words.className = 'quiet';
    words.replaceChildren(...usual.get(words));
  }
}

// checks: [input, function of its text that gives { value } or { problem }]. Gives the values by id, or null after telling
// every problem and going to the first.
export function valuesOf(checks) {
  const values = {};
  let first = null;
  for (const [input, check] of checks) {
    const { value, problem } = check(input.value.trim());
    tell(input, problem);
    values[input.id] = value;
    first ??= problem ? input : null;
  }
  if (first) {
    const closed = first.closest('details:not([open])');
    if (closed) {
      closed.open = true;
    }
    first.focus();
  }
  return first ? null : values;
}

export const needed = (words, example) => text => text === '' ? { problem: `${words} is missing: type it, such as ${example}.` } : { value: text };
