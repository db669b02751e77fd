// One message as an entry on a sheet.

import { link, make, textNode } from "./words.js";

const SERVICE = [
  ["new_chat_members", (m) => `${m.new_chat_members.map((one) => one.first_name).join(", ")} came in.`],
  ["left_chat_member", (m) => `${m.left_chat_member.first_name} went out.`],
];

// `sheet` offers press, answerTo, change, goTo, hour and what words.js asks of a desk.
export function entryNode(item, before, sheet) {
  const m = item.message;
  const node = make("article", { class: `entry ${item.from_bot ? "ours" : "theirs"}`, tabindex: "-1" });
  node.dataset.message = m.message_id;
  if (m.media_group_id && before?.message.media_group_id === m.media_group_id) node.classList.add("album");
  node.append(aside(item, before, sheet), body(item, sheet));
  return node;
}

function aside(item, before, sheet) {
  const m = item.message;
  const node = make("div", { class: "aside" });
  const same = before && before.message.from.id === m.from.id;
  node.append(make("span", { class: same ? "unseen" : "who-wrote" }, m.from.first_name));
  node.append(make("time", { datetime: new Date(m.date * 1000).toISOString() }, sheet.hour(m.date)));
  if (m.edit_date) node.append(make("span", {}, "changed"));
  const words = m.text ?? m.caption;
  const about = (words ?? "this message").slice(0, 40);
  if (item.from_bot && !m.left_chat_member) {
    node.append(make("button", { type: "button", class: "plain", "aria-label": `Answer: ${about}`, onclick: () => sheet.answerTo(item) }, "answer"));
  } else if (words != null) {
    node.append(make("button", { type: "button", class: "plain", "aria-label": `Change: ${about}`, onclick: () => sheet.change(item) }, "change"));
  }
  return node;
}

function body(item, sheet) {
  const m = item.message;
  const node = make("div", { class: "body" });
  if (m.reply_to_message) node.append(answering(m, sheet));
  if (m.photo) node.append(picture(m, item.alt));
  if (m.sticker) node.append(make("div", { class: "picture" }, make("img", { src: `/phone/files/${m.sticker.file_id}`, alt: `Sticker ${m.sticker.emoji ?? ""}`, width: 96, height: 96 })));
  if (m.voice) node.append(make("p", { class: "happened" }, `Voice message, ${m.voice.duration} seconds`));
  if (m.document) node.append(file(m.document));
  if (m.text != null) node.append(textNode(m.text, m.entities, sheet));
  if (m.caption != null) node.append(textNode(m.caption, m.caption_entities, sheet));
  for (const [name, words] of SERVICE) if (m[name]) node.append(make("p", { class: "happened" }, words(m)));
  const rows = m.reply_markup?.inline_keyboard;
  if (rows) node.append(slips(rows, m, sheet));
  return node;
}

function answering(m, sheet) {
  const to = m.reply_to_message;
  const words = m.quote?.text ?? to.text ?? to.caption ?? "a picture or file";
  return make("button", { type: "button", class: "answering", onclick: () => sheet.goTo(to.message_id) }, `to ${to.from.first_name}: ${words.slice(0, 90)}`);
}

function picture(m, alt) {
  const whole = m.photo[m.photo.length - 1];
  const img = make("img", {
    src: `/phone/files/${whole.file_id}`, width: whole.width, height: whole.height,
    alt: alt || (m.caption ? `Picture: ${m.caption.slice(0, 100)}` : "Picture without a description"),
  });
  return make("a", { class: "picture", href: `/phone/files/${whole.file_id}`, target: "_blank", rel: "noopener" }, img);
}

function file(document) {
  const size = document.file_size < 1500 ? `${document.file_size} bytes` : `${Math.round(document.file_size / 1000)} kB`;
  return make("a", { class: "file-link", href: `/phone/files/${document.file_id}`, download: document.file_name }, `${document.file_name} (${size})`);
}

function slips(rows, m, sheet) {
  const node = make("div", { class: "slips", role: "group", "aria-label": "Choices" });
  rows.forEach((row, atRow) => {
    node.append(make("div", {}, ...row.map((button, atColumn) => slip(button, m, atRow, atColumn, sheet))));
  });
  return node;
}

function slip(button, m, row, column, sheet) {
  if (button.url) return link(button.url, [button.text], sheet);
  const made = make("button", { type: "button" }, button.text);
  if (button.copy_text) made.addEventListener("click", () => sheet.copy(button.copy_text.text));
  else made.addEventListener("click", () => sheet.press(m.message_id, row, column, made));
  return made;
}
