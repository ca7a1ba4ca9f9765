// Hands an archive to the server, as the form on /contribute does, and shows what it answers. The token goes in the body of
// this one request and nowhere else.

const UNREACHABLE = 'The server cannot be reached. Nothing was sent, nothing is lost: try again when there is a connection.';

export function say(place, kind, title, words) {
  place.hidden = false;
  place.dataset.outcome = kind;
  place.replaceChildren(
    Object.assign(document.createElement('h2'), { id: 'outcome-title', textContent: title }),
    Object.assign(document.createElement('p'), { textContent: words }));
  place.setAttribute('aria-labelledby', 'outcome-title');
  place.focus();
}

function show(place, text, status) {
  const page = new DOMParser().parseFromString(text, 'text/html');
  const outcome = page.querySelector('#outcome[data-outcome]');
  if (!outcome) {
    const words = page.querySelector('main .answer')?.textContent ?? `It answered ${status}. Try again in a minute.`;
    say(place, 'problem', page.querySelector('main h1')?.textContent ?? 'The server did not take it', words);
    return;
  }
  place.hidden = false;
  place.dataset.outcome = outcome.dataset.outcome;
  place.replaceChildren(...[...outcome.childNodes].map(node => document.importNode(node, true)));
  place.setAttribute('aria-labelledby', 'outcome-title');
  place.focus();
}

// Sends an archive to be checked ('check') or contributed ('contribute'). Gives the outcome: sound, refused, contributed,
// problem.
export async function handOver(place, archive, name, action, token = '') {
  const form = new FormData();
  form.append('archive', archive, name);
  form.append('action', action);
  if (action === 'contribute') {
    form.append('token', token);
  }
  try {
    const answer = await fetch('/contribute', { method: 'POST', body: form, cache: 'no-store' });
    show(place, await answer.text(), answer.status);
  } catch {
    say(place, 'problem', 'No connection', UNREACHABLE);
  }
  return place.dataset.outcome;
}
