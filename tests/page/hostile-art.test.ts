// Art that would run, load or lead away: the page shows it, and nothing of it happens.
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { drawCarton, drawText } from '../hostile/hostile-case.js';
import { describeWith } from '../house/witnesses.js';
import { dropFiles, listOutside, SINGLE, startBrowser, watchPage } from './open-page.js';

const XHTML = 'xmlns="http://www.w3.org/1999/xhtml"';
const RUN = 'top.wasRun=1;self.wasRun=1;alert(1)';

/** Names that are markup, where the page prints names. */
const NAME = '&lt;img src=x onerror=&quot;alert(1)&quot;&gt;';

/** Hostile files; each holds a kind of attack, in every place that fits. */
function listFiles(net: string): Readonly<Record<string, Uint8Array>> {
  const attacks: Readonly<Record<string, string>> = {
    scripts: `<script>${RUN}</script><script href="${net}/a.js"/><script xlink:href="${net}/b.js"/><s:script xmlns:s="http://www.w3.org/2000/svg">${RUN}</s:script><title><script ${XHTML}>${RUN}</script></title>`,
    handlers: `<rect onload="${RUN}" onclick="${RUN}" onmouseover="${RUN}" onfocusin="${RUN}" x="30" y="30" width="40" height="20" fill="#2f6f5e"/><image href="#x" onerror="${RUN}"/><g onload="${RUN}"/>`,
    animations: `<a><set attributeName="href" to="javascript:${RUN}"/><animate onbegin="${RUN}" attributeName="x" dur="1s" begin="0s"/></a><discard begin="0s"/>`,
    foreign: `<foreignObject x="30" y="30" width="40" height="20"><body ${XHTML} onload="${RUN}"><script>${RUN}</script><iframe src="${net}/frame"/><img src="${net}/i.png" onerror="${RUN}"/></body></foreignObject>`,
    frames: `<iframe ${XHTML} src="${net}/f"/><embed ${XHTML} src="${net}/e"/><object ${XHTML} data="${net}/o"/><meta ${XHTML} http-equiv="refresh" content="0;url=${net}/m"/><link ${XHTML} rel="stylesheet" href="${net}/l.css"/><base ${XHTML} href="${net}/"/>`,
    loads: `<image href="${net}/p.png" x="30" y="30" width="9" height="9"/><use href="${net}/u.svg#a"/><filter id="f"><feImage href="${net}/fe.png"/></filter><rect filter="url(#f)" x="30" y="30" width="9" height="9" fill="#000"/><a href="${net}/a" ping="${net}/ping"><rect x="30" y="30" width="9" height="9" fill="#000"/></a>`,
    styles: `<style>@import url(${net}/i.css); @font-face { font-family: q; src: url(${net}/q.woff) } rect { background: url(${net}/b.png); mask: url(${net}/m.svg#a); cursor: url(${net}/c.cur), auto } text { font-family: q }</style><rect style="fill:url(${net}/g.svg#a)" x="30" y="30" width="9" height="9"/><text x="40" y="40">a</text>`,
    names: `<g id="${NAME}"><rect id="&quot;&gt;&lt;script&gt;alert(1)&lt;/script&gt;" class="${NAME}" x="31" y="31" width="5" height="5" fill="#000"/></g>`,
    nested: `<image x="30" y="30" width="9" height="9" href="data:image/svg+xml,&lt;svg xmlns='http://www.w3.org/2000/svg' onload='${RUN}'&gt;&lt;image href='${net}/n.png'/&gt;&lt;script&gt;${RUN}&lt;/script&gt;&lt;/svg&gt;"/>`,
  };
  const head = `<?xml-stylesheet href="${net}/s.css"?><!DOCTYPE svg SYSTEM "${net}/d.dtd">`;
  return {
    ...Object.fromEntries(Object.entries(attacks).map(([name, art]) => [name, drawCarton({ art })])),
    root: drawCarton({ root: `onload="${RUN}" xml:base="${net}/"` }),
    head: drawCarton({ head }),
    entity: drawCarton({
      head: `<!DOCTYPE svg [<!ENTITY x SYSTEM "${net}/x">]>`,
      art: '<text x="40" y="40">&x;</text>',
    }),
    broken: Buffer.from(`<img src=x onerror="${RUN}">${drawText({})}`),
    page: Buffer.from(`<html><body onload="${RUN}"><script>${RUN}</script><img src="${net}/h.png"></body></html>`),
  };
}

describeWith('chromium', 'the page, shown hostile art', () => {
  let browser: Browser;
  let server: Server;
  let net = '';
  let art = Buffer.alloc(0);
  const asked: string[] = [];
  beforeAll(async () => {
    browser = await startBrowser();
    server = createServer((request, response) => {
      if (request.url === '/art.svg') {
        response.setHeader('Content-Type', 'image/svg+xml');
        response.end(art);
        return;
      }
      // The browser's own wish, for a page of this server alone; it may come late.
      if (request.url !== '/favicon.ico') asked.push(request.url ?? '');
      response.end();
    });
    await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
    net = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  });
  afterAll(async () => {
    await browser?.close();
    server?.close();
  });

  it('runs nothing and asks for nothing', async () => {
    const { page, requests, troubles } = await watchPage(browser);
    await page.goto(SINGLE);
    const ended: Record<string, string> = {};
    for (const [name, bytes] of Object.entries(listFiles(net))) {
      await dropFiles(page, [{ name: `${name}<img src=x onerror=alert(1)>.svg`, bytes }]);
      ended[name] = (await page.textContent('.verdict')) ?? '';
      if (await page.isVisible('.board')) {
        await page.click('text=As drawn');
        await page.mouse.move(400, 450);
        expect(
          await page.evaluate(`[...document.querySelectorAll('.pictures img')].every((one) => one.complete)`),
        ).toBe(true);
      }
      expect(
        await page.evaluate(
          '[typeof wasRun, document.scripts.length, document.querySelectorAll("iframe,object,embed").length]',
        ),
        name,
      ).toEqual(['undefined', 1, 0]);
      expect(await page.evaluate(`document.querySelectorAll('img:not(.pictures img)').length`), name).toBe(0);
    }
    // Each was worked on to an end, and most of them are shown.
    expect(
      Object.values(ended).filter((words) => words === 'In register' || words === 'An answer is needed').length,
    ).toBeGreaterThan(8);
    expect(ended.entity).toBe('Cannot be read');
    expect(troubles).toEqual([]);
    expect(listOutside(requests)).toEqual([]);
    expect(asked).toEqual([]);
    await page.context().close();
  });

  it('would notice, were something asked for or run', async () => {
    const { page, troubles } = await watchPage(browser);
    const image = `<image href="${net}/p.png" width="9" height="9"/>`;
    art = Buffer.from(drawCarton({ first: `<script>${RUN}</script>`, art: image }));
    await page.goto(`${net}/art.svg`);
    await expect.poll(() => asked).toContain('/p.png');
    expect(troubles).toEqual(['dialog: 1']);
    await page.context().close();
  });

  it('may not be made to ask: the policy stops the page itself', async () => {
    const { page, requests } = await watchPage(browser);
    await page.goto(SINGLE);
    // What the page before asked for came in late, if at all.
    asked.length = 0;
    await page.evaluate(`(async () => {
      await fetch('${net}/fetch').catch(() => 0);
      new Image().src = '${net}/image.png';
      navigator.sendBeacon('${net}/beacon', 'x');
      const style = document.createElement('style');
      style.textContent = 'body { background: url(${net}/style.png) }';
      document.head.append(style);
      const script = document.createElement('script');
      script.src = '${net}/script.js';
      document.head.append(script);
      const line = document.createElement('script');
      line.textContent = 'self.wasRun = 1';
      document.head.append(line);
      const frame = document.createElement('iframe');
      frame.src = '${net}/frame';
      document.body.append(frame);
      try { new WebSocket('${net.replace('http', 'ws')}/socket'); } catch {}
      try { new Worker('data:text/javascript,fetch("${net}/worker")'); } catch {}
      const code = 'fetch("${net}/inside").catch(() => 0); try { importScripts("${net}/import.js") } catch {} postMessage(1)';
      const worker = new Worker(URL.createObjectURL(new Blob([code])));
      await new Promise((done) => { worker.onmessage = done; });
    })()`);
    await page.waitForTimeout(300);
    expect(await page.evaluate('typeof wasRun')).toBe('undefined');
    expect(asked).toEqual([]);
    expect(requests.filter((address) => address.includes('/style.png'))).toEqual([]);
    await page.context().close();
  });
});
