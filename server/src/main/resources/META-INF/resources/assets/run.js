// Tells how far a run is while it is being made, and shows its page anew when it has ended. Without this script the page is asked for
// again every few seconds.

const state = document.querySelector('#state[data-events]');

function words(run) {
  const latest = run.attempts.at(-1);
  if (latest.state === 'queued') {
    return 'It waits for its turn.';
  }
  if (!run.progress) {
    return 'It is being made.';
  }
  const { step, what, done, total } = run.progress;
  return `It is being made: ${[step, what].filter(Boolean).join(', ')}${total > 0 ? `, ${done} of ${total}` : ''}.`;
}

function watch() {
  const events = new EventSource(state.dataset.events);
  events.addEventListener('message', event => {
    const run = JSON.parse(event.data);
    if (['queued', 'running'].includes(run.attempts.at(-1).state)) {
      state.textContent = words(run);
    } else {
      events.close();
      location.reload();
    }
  });
  // too many watch already, or the line was cut: ask now and then instead
  events.addEventListener('error', () => {
    events.close();
    setTimeout(() => location.reload(), 4000);
  });
}

if (state) {
  watch();
}
