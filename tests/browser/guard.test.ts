import { request } from 'node:http';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { startApp, type RunningApp } from './setup';

let app: RunningApp;

beforeAll(async () => {
  app = await startApp();
});

afterAll(() => app?.stop());

/** fetch does not let a caller choose the Host header; this does. */
function ask(method: string, headers: Record<string, string>): Promise<{ status: number; body: string }> {
  return new Promise((resolve, reject) => {
    const sent = request(`${app.address}/look`, { method, headers }, (response) => {
      let body = '';
      response.on('data', (chunk: Buffer) => (body += chunk.toString()));
      response.on('end', () => resolve({ status: response.statusCode ?? 0, body }));
    });
    sent.on('error', reject);
    sent.end();
  });
}

it('answers on this machine’s own names', async () => {
  expect((await ask('GET', {})).status).toBe(302);
  expect((await ask('GET', { host: 'localhost:8471' })).status).toBe(302);
});

it('refuses a name that was pointed at this machine', async () => {
  for (const host of ['flangemark.example', '127.0.0.1.example:8471', 'localhost.example']) {
    const { status, body } = await ask('GET', { host });
    expect(status).toBe(403);
    expect(body).toContain('this machine only');
  }
});

it('refuses a form sent by another site', async () => {
  for (const origin of ['http://other.example', 'null', 'http://127.0.0.1:1']) {
    const { status, body } = await ask('POST', { origin });
    expect(status).toBe(403);
    expect(body).toContain('Nothing was changed');
  }
  expect((await ask('POST', { 'sec-fetch-site': 'cross-site' })).status).toBe(403);
});

it('takes a form of its own', async () => {
  const form = { 'content-type': 'application/x-www-form-urlencoded' };
  expect((await ask('POST', { origin: app.address, ...form })).status).toBe(302);
});
