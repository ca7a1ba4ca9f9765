// Lets a folder be dropped or chosen, makes a zip of it here, and shows the findings on this page. Without this script the
// form takes a zip and does the same.
import { zipOf } from './zip.js';
import { handOver, say } from './hand-over.js';

const MOST_FILES = 64;

const form = document.querySelector('#hand-over');
const outcome = document.querySelector('#outcome');
const archive = document.querySelector('#archive');
const token = document.querySelector('#token');
const [check, contribute] = form.querySelectorAll('button');

const chosenWords = Object.assign(document.createElement('p'), { id: 'chosen', role: 'status' });
const kilobytes = bytes => bytes < 1000 ? `${bytes} bytes` : `${Math.ceil(bytes / 1000).toLocaleString('en')} kB`;

// What will be sent: { blob, name }, or null.
let chosen = null;

function told(words) {
  chosenWords.textContent = words;
}

function stale() {
  outcome.hidden = true;
  delete outcome.dataset.outcome;
}

function choose(blob, name, words) {
  chosen = { blob, name };
  stale();
  told(words);
}

function refuse(words) {
  chosen = null;
  stale();
  told(words);
}

// files: [{ path, file }] below one folder, or loose.
async function chooseFolder(name, files) {
  const depth = Math.min(...files.map(one => one.path.split('/').length));
  const kept = files.filter(one => one.path.split('/').length === depth && !one.file.name.startsWith('.'));
  if (kept.length === 0) {
    refuse(`${name} holds no file. Choose the folder that contribution.json and trials.csv lie in.`);
  } else if (kept.length > MOST_FILES) {
    refuse(`${name} holds ${kept.length} files, more than the ${MOST_FILES} of a contribution. Choose the folder that`
      + ' contribution.json and trials.csv lie in.');
  } else {
    told(`Packing ${name} …`);
    const blob = await zipOf(kept.map(one => ({ name: one.file.name, content: one.file })));
    const left = files.length - kept.length;
    choose(blob, `${name}.zip`, `${name}: ${kept.map(one => one.file.name).join(', ')}; packed ${kilobytes(blob.size)}.`
      + (left > 0 ? ` ${left} hidden or deeper files stay here.` : ''));
  }
}

function chooseArchive(file) {
  choose(file, file.name, `${file.name}: ${kilobytes(file.size)}.`);
}

async function filesOf(entry, path) {
  if (entry.isFile) {
    return [{ path: path + entry.name, file: await new Promise((good, bad) => entry.file(good, bad)) }];
  }
  const reader = entry.createReader();
  const found = [];
  // a reader gives a hundred at a time, then none
  for (let some; (some = await new Promise((good, bad) => reader.readEntries(good, bad))).length > 0 && found.length <= 4 * MOST_FILES;) {
    for (const one of some) {
      found.push(...(one.isFile ? await filesOf(one, `${path + entry.name}/`) : []));
    }
  }
  return found;
}

async function dropped(transfer) {
  const entries = [...transfer.items].map(item => item.webkitGetAsEntry?.()).filter(Boolean);
  const files = [...transfer.files];
  if (entries.length === 1 && entries[0].isDirectory) {
    await chooseFolder(entries[0].name, await filesOf(entries[0], ''));
  } else if (files.length === 1 && files[0].name.toLowerCase().endsWith('.zip')) {
    chooseArchive(files[0]);
  } else if (files.length > 0) {
    await chooseFolder('contribution', files.map(file => ({ path: file.name, file })));
  }
}

function dropZone() {
  const zone = document.createElement('div');
  zone.className = 'drop';
  const folder = Object.assign(document.createElement('input'), { type: 'file', id: 'folder', webkitdirectory: true, multiple: true });
  const label = Object.assign(document.createElement('label'), { htmlFor: 'folder', textContent: 'Or the folder itself' });
  const words = Object.assign(document.createElement('p'), { className: 'quiet', textContent: 'Or drop the folder or its .zip here.' });
  const field = Object.assign(document.createElement('p'), { className: 'field' });
  field.append(label, folder);
  zone.append(field, words, chosenWords);
  folder.addEventListener('change', () => {
    const files = [...folder.files];
    if (files.length > 0) {
      archive.value = '';
      const name = files[0].webkitRelativePath.split('/')[0] || 'contribution';
      chooseFolder(name, files.map(file => ({ path: file.webkitRelativePath || file.name, file })));
    }
  });
  archive.addEventListener('change', () => {
    folder.value = '';
    if (archive.files.length > 0) {
      chooseArchive(archive.files[0]);
    } else {
      refuse('');
    }
  });
  for (const name of ['dragenter', 'dragover']) {
    form.addEventListener(name, event => {
      event.preventDefault();
      zone.classList.add('over');
    });
  }
  form.addEventListener('dragleave', event => form.contains(event.relatedTarget) || zone.classList.remove('over'));
  form.addEventListener('drop', event => {
    event.preventDefault();
    zone.classList.remove('over');
    archive.value = '';
    folder.value = '';
    dropped(event.dataTransfer).catch(() => refuse('What was dropped cannot be read. Choose the folder with the button.'));
  });
  return zone;
}

async function hand(action) {
  if (!chosen) {
    say(outcome, 'problem', 'Nothing was chosen', 'Choose a folder or its .zip first.');
    return;
  }
  if (action === 'contribute' && token.value.trim() === '') {
    say(outcome, 'problem', 'The token is missing', 'Type the token that the operator of this server gave you. The findings'
      + ' can be seen without one.');
    return;
  }
  check.disabled = contribute.disabled = true;
  told(action === 'check' ? `Checking ${chosen.name} …` : `Contributing ${chosen.name} …`);
  const seen = await handOver(outcome, chosen.blob, chosen.name, action, token.value.trim());
  told(`${chosen.name}: ${seen === 'problem' ? 'not done' : action === 'check' ? 'checked' : 'done'}.`);
  check.disabled = contribute.disabled = false;
  if (seen === 'contributed') {
    token.value = '';
  }
}

form.querySelector('fieldset p').after(dropZone());
form.addEventListener('submit', event => {
  event.preventDefault();
  hand(event.submitter?.value === 'contribute' ? 'contribute' : 'check');
});
if (archive.files.length > 0) {
  // a browser that comes back to the page keeps what was chosen
  chooseArchive(archive.files[0]);
}
