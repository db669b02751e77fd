// One phone: what stands in its chat, and everything its owner can do.

import { bring, pause, tell } from "./talk.js";
import { entryNode } from "./entry.js";
import { make } from "./words.js";

const ANSWER_MS = 15000;

export class Sheet {
  constructor(desk, chat) {
    this.desk = desk;
    this.items = new Map();
    this.replyTo = null;
    this.changing = null;
    const node = document.getElementById("sheet").content.cloneNode(true).querySelector(".sheet");
    this.node = node;
    this.find = (what) => node.querySelector(what);
    this.log = this.find(".log");
    this.words = this.find(".words");
    this.take(chat);
    this.listen();
  }

  get path() { return `chats/${this.chat.id}`; }

  // --- what the stand-in says of this chat

  take(chat) {
    const cleared = this.chat && chat.cleared_up_to > this.chat.cleared_up_to;
    this.chat = chat;
    this.node.setAttribute("aria-label", `Phone: ${chat.title}`);
    this.node.classList.toggle("has-fresh", chat.unread > 0);
    this.find(".tag .name").textContent = chat.title;
    this.find(".about").textContent = chat.blocked ? "has blocked the bot" : chat.about || (chat.group ? chat.people.map((one) => one.name.split(" ")[0]).join(", ") : "");
    this.find(".fresh").textContent = chat.unread ? `${chat.unread} new` : "";
    this.log.setAttribute("aria-label", `Messages of ${chat.title}`);
    this.find(".words-label").textContent = `Write as ${chat.title}`;
    this.words.setAttribute("aria-label", `Write as ${chat.title}`);
    this.words.placeholder = chat.started ? "Write here" : "Press Start in the commands below";
    this.fillWho();
    this.fillCommands();
    this.fillKeys();
    const shown = { block: !chat.group && !chat.blocked, unblock: chat.blocked, add_bot: chat.group && !chat.bot_in, take_out_bot: chat.group && chat.bot_in };
    for (const [name, is] of Object.entries(shown)) this.find(`[data-do="${name}"]`).hidden = !is;
    if (cleared) this.show([...this.items.values()].filter((one) => one.message.message_id > chat.cleared_up_to));
  }

  show(items) {
    this.items.clear();
    this.log.replaceChildren();
    for (const item of items) this.add(item);
  }

  add(item) {
    const number = item.message.message_id;
    const isNew = !this.items.has(number);
    const atEnd = this.log.scrollHeight - this.log.scrollTop - this.log.clientHeight < 120;
    const old = this.log.querySelector(`[data-message="${number}"]`);
    const before = this.items.get(this.numberBefore(number));
    this.items.set(number, item);
    const node = entryNode(item, before, this);
    if (old) old.replaceWith(node);
    else {
      this.dayLine(item, before);
      this.log.append(node);
    }
    if (isNew) {
      this.stopWriting();
      this.force(item);
    }
    if (atEnd || !item.from_bot) this.log.scrollTop = this.log.scrollHeight;
    for (const img of node.querySelectorAll("img")) img.addEventListener("load", () => { if (atEnd) this.log.scrollTop = this.log.scrollHeight; });
  }

  numberBefore(number) {
    let last = null;
    for (const one of this.items.keys()) if (one < number && (last == null || one > last)) last = one;
    return last;
  }

  dayLine(item, before) {
    const day = this.desk.day(item.message.date);
    if (!before || this.desk.day(before.message.date) !== day) this.log.append(make("p", { class: "day" }, day));
  }

  gone(number) {
    this.items.delete(number);
    this.log.querySelector(`[data-message="${number}"]`)?.remove();
    if (this.replyTo?.message.message_id === number) this.leave();
  }

  writing(action) {
    this.stopWriting();
    const doing = action.action.startsWith("upload") ? "sending something" : "writing";
    this.line = make("p", { class: "writing" }, `${this.desk.bot.name} is ${doing} …`);
    this.log.append(this.line);
    this.log.scrollTop = this.log.scrollHeight;
    this.timer = setTimeout(() => this.stopWriting(), action.seconds * 1000);
  }

  stopWriting() {
    clearTimeout(this.timer);
    this.line?.remove();
    this.line = null;
  }

  answered(answer) {
    const waiting = this.pressed;
    if (waiting && waiting.query === answer.query) this.release();
    if (answer.text && answer.alert) this.desk.say(this.chat.title, answer.text);
    else if (answer.text) this.notice(answer.text);
  }

  // --- what its owner does

  listen() {
    this.find("form.write").addEventListener("submit", (event) => { event.preventDefault(); this.send(); });
    this.words.addEventListener("keydown", (event) => {
      if (event.key === "Enter" && !event.shiftKey && !event.isComposing) { event.preventDefault(); this.send(); }
      if (event.key === "Escape") this.leave();
    });
    this.find(".to-off").addEventListener("click", () => { this.leave(); this.words.focus(); });
    for (const button of this.node.querySelectorAll("[data-do]")) {
      button.addEventListener("click", () => this.attempt(() => tell(`${this.path}/${button.dataset.do}`, this.how())));
    }
    this.files(".pictures", "photo");
    this.files(".any-file", "document");
    this.find(".link-open").addEventListener("click", () => {
      const field = this.find(".link-text");
      this.attempt(async () => { await tell(`${this.path}/open`, { link: field.value.trim() }); field.value = ""; });
    });
    this.node.addEventListener("focusin", () => this.look());
    this.node.addEventListener("pointerdown", () => this.look());
  }

  look() {
    this.desk.looksAt(this);
    if (this.chat.unread) tell(`${this.path}/read`).catch(() => {});
  }

  files(where, kind) {
    const field = this.find(where);
    field.addEventListener("change", () => this.attempt(async () => {
      const caption = this.words.value.trim();
      await bring(`${this.path}/${kind}`, [...field.files], { ...this.how(), caption });
      field.value = "";
      this.words.value = "";
      this.leave();
    }));
  }

  how() {
    const who = this.chat.group ? Number(this.find(".who select").value) : undefined;
    return { person: who, reply_to: this.replyTo?.message.message_id };
  }

  async send(text = this.words.value) {
    if (!text.trim()) { this.words.focus(); return; }
    const changing = this.changing;
    await this.attempt(async () => {
      if (changing) await tell(`${this.path}/edit`, { message_id: changing.message.message_id, text });
      else await tell(`${this.path}/say`, { text, ...this.how() });
      this.words.value = "";
      this.leave();
    });
    this.words.focus();
  }

  command(text) { this.attempt(() => tell(`${this.path}/say`, { text, person: this.how().person })); }
  isOurLink(address) { return this.desk.isOurLink(address); }
  openLink(address) { this.desk.openLink(address, this); }
  hour(seconds) { return this.desk.hour(seconds); }

  async copy(text) {
    await navigator.clipboard.writeText(text).catch(() => {});
    this.notice("Copied.");
  }

  press(message, row, column, button) {
    if (button.getAttribute("aria-disabled") === "true") return;
    this.release();
    button.setAttribute("aria-disabled", "true");
    button.classList.add("waits");
    this.pressed = { button };
    const mine = this.pressed;
    this.attempt(async () => {
      const { person } = this.how();
      mine.query = (await tell(`${this.path}/press`, { message_id: message, row, column, person })).query;
      await pause(ANSWER_MS);
      if (this.pressed === mine) { this.release(); this.notice("The bot has not answered this button."); }
    }).then((went) => { if (!went && this.pressed === mine) this.release(); });
  }

  release() {
    this.pressed?.button.removeAttribute("aria-disabled");
    this.pressed?.button.classList.remove("waits");
    this.pressed = null;
  }

  answerTo(item) {
    this.leave();
    this.replyTo = item;
    this.mark(item, `Answering: ${item.message.text ?? item.message.caption ?? "a picture"}`);
  }

  change(item) {
    this.leave();
    this.changing = item;
    this.words.value = item.message.text ?? item.message.caption ?? "";
    this.mark(item, "Changing what you wrote");
  }

  mark(item, words) {
    this.find(".to-what").textContent = words;
    this.find(".to").hidden = false;
    this.log.querySelector(`[data-message="${item.message.message_id}"]`)?.classList.add("asked");
    this.words.focus();
  }

  leave() {
    if (this.changing) this.words.value = "";
    this.replyTo = this.changing = null;
    this.find(".to").hidden = true;
    this.log.querySelector(".asked")?.classList.remove("asked");
  }

  force(item) {
    if (item.from_bot && this.chat.keyboard?.force_reply && document.activeElement === this.words) this.answerTo(item);
  }

  goTo(number) {
    const node = this.log.querySelector(`[data-message="${number}"]`);
    if (!node) { this.notice("That message is no longer here."); return; }
    node.scrollIntoView({ block: "center" });
    node.focus();
  }

  async attempt(doing) {
    try {
      this.notice("");
      await doing();
      return true;
    } catch (trouble) {
      this.notice(trouble.message);
      return false;
    }
  }

  notice(words) {
    this.find(".notice").textContent = words;
    clearTimeout(this.noticeTimer);
    if (words) this.noticeTimer = setTimeout(() => { this.find(".notice").textContent = ""; }, 12000);
  }

  // --- lists that the bot sets

  fillWho() {
    const field = this.find(".who select");
    this.find(".who").hidden = !this.chat.group;
    if (!this.chat.group || field.options.length === this.chat.people.length) return;
    field.replaceChildren(...this.chat.people.map((one) => make("option", { value: one.id }, one.name)));
  }

  fillCommands() {
    const listed = [...this.chat.commands];
    if (!this.chat.started && !this.chat.group) listed.unshift({ command: "start", description: "begin to talk with the bot" });
    const text = JSON.stringify(listed);
    if (text === this.commandsText) return;
    this.commandsText = text;
    const drawer = this.find(".commands");
    drawer.hidden = listed.length === 0;
    drawer.querySelector("ul").replaceChildren(...listed.map((one) => make("li", {}, make("button", { type: "button", onclick: () => { drawer.open = false; this.command(`/${one.command}`); this.words.focus(); } },
      make("span", { class: "name" }, `/${one.command}`), make("span", {}, one.description)))));
  }

  fillKeys() {
    const rows = this.chat.keyboard?.keyboard ?? [];
    const place = this.find(".keys");
    place.hidden = rows.length === 0;
    place.replaceChildren(...rows.flat().map((key) => {
      const text = typeof key === "string" ? key : key.text;
      return make("button", { type: "button", onclick: () => this.send(text) }, text);
    }));
  }
}
