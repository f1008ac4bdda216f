// The page: each member's pane follows the channel as that member may read it. Whatever comes is put on the page as text, never as markup.

const MEMBERS = [
  { key: 'tamsin', name: 'Tamsin', role: 'may change the club’s settings' },
  { key: 'wilf', name: 'Wilf', role: 'a member' },
];

const $ = (selector, within = document) => within.querySelector(selector);

/** An element with text, or with children. */
const make = (tag, { text, className, children = [], ...properties } = {}) => {
  const element = document.createElement(tag);
  if (text !== undefined) element.textContent = text;
  if (className !== undefined) element.className = className;
  Object.assign(element, properties);
  element.append(...children);
  return element;
};

const panes = new Map();
let lastUsed = MEMBERS[0].key;

/** Sends what a member asks; what the server says against it stands in the pane. */
const send = async (pane, form) => {
  lastUsed = pane.key;
  pane.trouble.textContent = '';
  try {
    const response = await fetch(`/say?member=${pane.key}`, { method: 'POST', body: form });
    if (!response.ok) pane.trouble.textContent = await response.text();
    return response.ok;
  } catch {
    pane.trouble.textContent = 'Pierhand does not answer. Is it still running?';
    return false;
  }
};

const fieldInput = ({ kind, id, hint, required }) => {
  const input = kind === 'paragraph' ? make('textarea', { rows: 6 }) : make('input');
  input.id = `field-${id}`;
  input.name = input.id;
  input.required = required === true;
  if (kind === 'file') input.type = 'file';
  if (hint !== undefined) input.setAttribute('aria-describedby', `hint-${id}`);
  return input;
};

/** Opens a command's form; what is typed goes with the choice that opened it. */
const openForm = (pane, { run, form: { name, shape } }) => {
  const dialog = $('dialog');
  $('#form-title').textContent = shape.title;
  const fields = shape.fields.flatMap((field) => [
    make('label', { text: field.label, htmlFor: `field-${field.id}` }),
    fieldInput(field),
    ...(field.hint === undefined ? [] : [make('p', { text: field.hint, className: 'from', id: `hint-${field.id}` })]),
  ]);
  $('.fields', dialog).replaceChildren(...fields);
  $('.cancel', dialog).onclick = () => dialog.close();
  $('form', dialog).onsubmit = async (event) => {
    event.preventDefault();
    const filled = new FormData(event.target);
    filled.set('run', run);
    filled.set('form', name);
    dialog.close();
    await send(pane, filled);
  };
  dialog.showModal();
};

const choose = (pane, choice) => {
  if (choice.form !== null) return openForm(pane, choice);
  const form = new FormData();
  form.set('run', choice.run);
  form.set('label', choice.label);
  return send(pane, form);
};

const choiceButton = (pane, choice) =>
  make('button', {
    type: 'button',
    text: choice.preferred ? `${choice.label} (usual)` : choice.label,
    className: choice.preferred ? 'preferred' : '',
    onclick: () => choose(pane, choice),
  });

const picture = ({ address, altText }) => make('img', { src: address, alt: altText, width: 960, height: 720 });

const list = (className, lines) =>
  lines.length === 0 ? [] : [make('ul', { className, children: lines.map((text) => make('li', { text })) })];

const facts = (entries) =>
  entries.length === 0
    ? []
    : [
        make('dl', {
          children: entries.flatMap(({ label, value }) => [make('dt', { text: label }), make('dd', { text: value })]),
        }),
      ];

const choices = (pane, offered) => {
  if (offered.length === 0) return [];
  const group = make('div', { className: 'choices', children: offered.map((choice) => choiceButton(pane, choice)) });
  group.setAttribute('role', 'group');
  group.setAttribute('aria-label', 'Choices');
  return [group];
};

const answer = (pane, said) =>
  make('li', {
    className: `answer ${said.level}`,
    children: [
      ...(said.isPrivate ? [make('p', { className: 'private', text: `Only ${pane.name} sees this` })] : []),
      ...(said.title === null ? [] : [make('h3', { text: said.title })]),
      make('p', { text: said.levelWord === null ? said.summary : `${said.levelWord}: ${said.summary}` }),
      ...facts(said.facts),
      ...list('cautions', said.cautions),
      ...list('notes', said.notes),
      ...(said.picture === null ? [] : [picture(said.picture)]),
      ...choices(pane, said.choices),
    ],
  });

const question = ({ from, text }) =>
  make('li', { className: 'question', children: [make('p', { className: 'from', text: from }), make('p', { text })] });

const show = (pane, said) => {
  const shown = said.kind === 'question' ? question(said) : answer(pane, said);
  pane.log.append(shown);
  // A long answer is read from its beginning.
  pane.log.scrollTop = shown.offsetTop - pane.log.offsetTop - 8;
};

const follow = (pane) => {
  const events = new EventSource(`/events?member=${pane.key}`);
  events.onopen = () => {
    // After a lost connection everything comes again.
    pane.log.replaceChildren();
    pane.trouble.textContent = '';
  };
  events.onmessage = ({ data }) => show(pane, JSON.parse(data));
  events.onerror = () => {
    pane.trouble.textContent = 'Pierhand does not answer. Is it still running?';
  };
};

const ask = async (pane, event) => {
  event.preventDefault();
  const form = new FormData(pane.form);
  const hasFile = form.get('file')?.size > 0;
  if (!hasFile) form.delete('file');
  if (!hasFile && form.get('text').trim() === '') return;
  if (await send(pane, form)) pane.form.reset();
};

const addPane = ({ key, name, role }) => {
  const section = $('#pane').content.cloneNode(true).firstElementChild;
  const [heading, log, trouble, form] = ['h2', '.log', '.trouble', 'form'].map((part) => $(part, section));
  const pane = { key, name, section, log, trouble, form };
  heading.textContent = `${name}, ${role}`;
  heading.id = `heading-${key}`;
  section.setAttribute('aria-labelledby', heading.id);
  log.setAttribute('aria-label', `What ${name} sees`);
  const text = $('textarea', form);
  text.id = `text-${key}`;
  const label = $('.say', form);
  label.htmlFor = text.id;
  label.textContent = `Ask as ${name}`;
  $('input[type=file]', form).setAttribute('aria-label', `File or picture from ${name}`);
  const button = $('.send', form);
  button.textContent = 'Ask';
  button.setAttribute('aria-label', `Ask as ${name}`);
  text.onfocus = () => {
    lastUsed = key;
  };
  text.onkeydown = (event) => {
    if (event.key === 'Enter' && !event.shiftKey && !event.isComposing) form.requestSubmit(event.preventDefault());
  };
  form.onsubmit = (event) => ask(pane, event);
  panes.set(key, pane);
  $('#panes').append(section);
  follow(pane);
};

/** On a phone one pane is seen at a time. */
const lookAs = (key) => {
  lastUsed = key;
  for (const pane of panes.values()) pane.section.classList.toggle('aside', pane.key !== key);
  for (const button of $('#switch').children)
    button.setAttribute('aria-pressed', String(button.dataset.member === key));
};

const addSwitch = ({ key, name }) => {
  const button = make('button', { type: 'button', text: name, onclick: () => lookAs(key) });
  button.dataset.member = key;
  $('#switch').append(button);
};

const fillIn = (example) => {
  const text = $('textarea', panes.get(lastUsed).form);
  text.value = example;
  text.focus();
};

const addCommands = async () => {
  const commands = await (await fetch('/commands')).json();
  $('#commands ul').append(
    ...commands.map(({ summary, example }) =>
      make('li', {
        children: [
          make('button', { type: 'button', text: example, onclick: () => fillIn(example) }),
          make('span', { text: summary }),
        ],
      }),
    ),
  );
};

MEMBERS.forEach(addPane);
MEMBERS.forEach(addSwitch);
lookAs(lastUsed);
$('textarea').focus();
await addCommands();
