// A text with its entities as nodes. Offsets are UTF-16 units, as JavaScript's own strings count.
// Nothing that was typed ever becomes markup: only text nodes and a fixed set of elements are made.

const PLAIN = { bold: "strong", italic: "em", underline: "u", strikethrough: "s", code: "code" };

export function make(kind, attributes = {}, ...inside) {
  const node = document.createElement(kind);
  for (const [name, value] of Object.entries(attributes)) {
    if (name === "class") node.className = value;
    else if (name.startsWith("on")) node.addEventListener(name.slice(2), value);
    else if (value !== false && value != null) node.setAttribute(name, value === true ? "" : value);
  }
  node.append(...inside);
  return node;
}

// `desk` offers openLink(address), isOurLink(address) and command(text).
export function textNode(text, entities, desk) {
  const sorted = [...(entities ?? [])].sort((a, b) => a.offset - b.offset || b.length - a.length);
  const place = { n: 0 };
  return make("div", { class: "text" }, ...pieces(text, 0, text.length, sorted, place, desk));
}

function pieces(text, start, end, entities, place, desk) {
  const made = [];
  let at = start;
  while (place.n < entities.length && entities[place.n].offset < end) {
    const one = entities[place.n++];
    const from = Math.max(one.offset, at);
    const to = Math.min(one.offset + one.length, end);
    if (to <= from) continue;
    if (from > at) made.push(text.slice(at, from));
    const inside = pieces(text, from, to, entities, place, desk);
    made.push(wrapped(one, text.slice(from, to), inside, desk));
    at = to;
  }
  if (at < end) made.push(text.slice(at, end));
  return made;
}

function wrapped(entity, text, inside, desk) {
  switch (entity.type) {
    case "pre": return make("pre", {}, make("code", {}, ...inside));
    case "blockquote": case "expandable_blockquote": return make("blockquote", {}, ...inside);
    case "spoiler": return spoiler(inside);
    case "url": return link(text, inside, desk);
    case "text_link": return link(entity.url, inside, desk);
    case "email": return make("a", { href: `mailto:${text}` }, ...inside);
    case "bot_command": return make("button", { type: "button", class: "in-text", onclick: () => desk.command(text) }, text);
    default: return make(PLAIN[entity.type] ?? "span", {}, ...inside);
  }
}

function spoiler(inside) {
  const words = make("span", { "aria-hidden": "true" }, ...inside);
  const cover = make("button", { type: "button", class: "in-text hidden-words", "aria-label": "Hidden words. Press to show.", "aria-expanded": "false" }, words);
  cover.addEventListener("click", () => cover.replaceWith(make("span", {}, ...words.childNodes)));
  return cover;
}

export function link(address, inside, desk) {
  const whole = /^[a-z]+:/i.test(address) ? address : `https://${address}`;
  if (desk.isOurLink(whole)) {
    return make("button", { type: "button", class: "in-text", onclick: () => desk.openLink(whole) }, ...inside);
  }
  if (!/^https?:/i.test(whole)) return make("span", {}, ...inside);
  return make("a", { href: whole, target: "_blank", rel: "noopener noreferrer" }, ...inside);
}
