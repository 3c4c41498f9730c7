// Parts of the pages that are made here. Words go in as text. The drawings are the
// engine's own (src/draw/svg.rs escapes every text in them) and are read as XML, which
// runs nothing.

export function card(...children) {
  const section = element('section', 'card');
  section.append(...children);
  return section;
}

export function drawing(svg) {
  const box = element('div', 'plan');
  box.append(document.importNode(new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement, true));
  return box;
}

export function element(tag, name, text) {
  const made = document.createElement(tag);
  if (name) made.className = name;
  if (text) made.textContent = text;
  return made;
}
