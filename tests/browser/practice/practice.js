// Says on the page what has just happened to it.
const said = document.getElementById('said');
const say = text => { said.textContent = text; };
const on = (id, type, act) => document.getElementById(id).addEventListener(type, act);

on('save', 'click', event => say(`saved by ${event.pointerType}`));
on('near', 'click', () => say('near side'));
on('far', 'click', () => say('far side'));
on('save-all', 'click', () => say('saved all'));
on('length', 'keydown', event => { if (event.key === 'Enter') say(`length is ${event.target.value}`); });
on('photos', 'change', event => say(`${event.target.files.length} photos, ${event.target.files[0].name}`));
on('list', 'click', () => {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob(['one\ntwo\n'], { type: 'text/plain' }));
  link.download = 'list.txt';
  link.click();
  say('list sent');
});

// Says what will come, and only then lets it come, line by line.
on('late-key', 'click', () => {
  say('two lines come late');
  const list = document.getElementById('late');
  list.replaceChildren();
  ['first', 'second'].forEach((text, at) => setTimeout(() => {
    const line = document.createElement('li');
    line.textContent = text;
    list.append(line);
  }, 300 * (at + 1)));
});

// Moves in every frame.
on('restless', 'click', () => {
  let moved = 0;
  const move = () => {
    say(`moved ${++moved} times`);
    requestAnimationFrame(move);
  };
  move();
});
