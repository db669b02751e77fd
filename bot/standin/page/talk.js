// Asks the stand-in and tells it things. All paths are under /phone on the page's own address.

export class Trouble extends Error {}

async function answer(response) {
  const body = await response.json().catch(() => ({}));
  if (!response.ok) throw new Trouble(body.error ?? "The stand-in did not answer as it should.");
  return body;
}

export async function ask(path) {
  return answer(await fetch(`/phone/${path}`));
}

export async function tell(path, what = {}) {
  return answer(await fetch(`/phone/${path}`, {
    method: "POST",
    headers: { "Content-Type": "application/json" },
    body: JSON.stringify(what),
  }));
}

export async function bring(path, files, what = {}) {
  const form = new FormData();
  for (const [name, value] of Object.entries(what)) if (value != null) form.set(name, value);
  files.forEach((file, n) => form.append(`file${n}`, file));
  return answer(await fetch(`/phone/${path}`, { method: "POST", body: form }));
}

export const pause = (ms) => new Promise((go) => setTimeout(go, ms));
