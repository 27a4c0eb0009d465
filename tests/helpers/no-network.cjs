/**
 * Loaded before a program (`node --require`): every door to a network is shut, and what knocks at one is written to the
 * file that WAYFILE_KNOCKS names. The process still ends as it would.
 */
"use strict";
const { appendFileSync } = require("node:fs");
const dgram = require("node:dgram");
const dns = require("node:dns");
const net = require("node:net");

const refuse = (what) =>
  function refused(...args) {
    // A path is a pipe or a socket of this machine: the channel to an editor or to a thread.
    const [to] = args;
    if (what === "net.connect" && (typeof to === "string" || to?.path !== undefined || to?.[0]?.path !== undefined))
      return connect.apply(this, args);
    appendFileSync(process.env.WAYFILE_KNOCKS, `${what} ${JSON.stringify(to)}\n`);
    throw new Error(`${what} is refused: there is no network here.`);
  };

const { connect } = net.Socket.prototype;
net.Socket.prototype.connect = refuse("net.connect");
dgram.createSocket = refuse("dgram.createSocket");
for (const name of Object.keys(dns)) if (/^(?:lookup|resolve|reverse)/.test(name)) dns[name] = refuse(`dns.${name}`);
for (const name of Object.keys(dns.promises))
  if (/^(?:lookup|resolve|reverse)/.test(name)) dns.promises[name] = refuse(`dns.promises.${name}`);
for (const name of ["fetch", "WebSocket", "EventSource"]) globalThis[name] = refuse(name);
