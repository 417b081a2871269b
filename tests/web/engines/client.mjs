// A WebDriver client: the part of the W3C's protocol that the journeys use, over plain HTTP, the same for every driver.

const ELEMENT = "element-6066-11e4-a52e-4f735466cecf"; // the protocol's name for a reference to an element
const PATIENCE = 60_000;

/** Opens a browser through the driver that listens at `url` and answers with the session. */
export async function open(url, capabilities) {
  const { sessionId, capabilities: got } = await ask("POST", `${url}/session`, { capabilities: { alwaysMatch: capabilities } });
  return new Session(`${url}/session/${sessionId}`, got);
}

/** Whether a driver listens at `url` and would open a browser. */
export async function listens(url) {
  return (await ask("GET", `${url}/status`).catch(() => null))?.ready === true;
}

class Session {
  #url;

  constructor(url, { browserVersion }) {
    this.#url = url;
    this.version = browserVersion;
  }

  go(url) {
    return this.#post("url", { url });
  }

  /** Runs a function in the page. An element that it answers with comes back as a reference, for `click` and `type`. */
  run(script, ...args) {
    return this.#post("execute/sync", { script: `return (${script}).apply(null, arguments)`, args });
  }

  click(element) {
    return this.#post(`element/${element[ELEMENT]}/click`);
  }

  type(element, text) {
    return this.#post(`element/${element[ELEMENT]}/value`, { text });
  }

  /** The picture of what is on the screen, as a PNG. */
  async screenshot() {
    return Buffer.from(await ask("GET", `${this.#url}/screenshot`), "base64");
  }

  /** Closes the browser, as somebody would who is done with it. */
  close() {
    return ask("DELETE", this.#url);
  }

  #post(command, body = {}) {
    return ask("POST", `${this.#url}/${command}`, body);
  }
}

async function ask(method, url, body) {
  const headers = { "content-type": "application/json" };
  const signal = AbortSignal.timeout(PATIENCE);
  const response = await fetch(url, { method, headers, body: body && JSON.stringify(body), signal });
  const { value } = await response.json();
  if (!response.ok) throw Object.assign(new Error(value.message), { code: value.error });
  return value;
}
