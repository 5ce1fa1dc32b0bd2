# The service in the platform's runtime alone, without the tools that wrangler puts in front of it: what `make load` watches the memory of.
# Paths are from here, as entry.mjs has them.
using Workerd = import "/workerd/workerd.capnp";

const config :Workerd.Config = (
  services = [(name = "drywright", worker = .service)],
  sockets = [(name = "http", address = "127.0.0.1:8417", http = (), service = "drywright")],
);

const service :Workerd.Worker = (
  modules = [
    (name = "wasm/edge/entry.mjs", esModule = embed "entry.mjs"),
    (name = ".build/edge/worker.mjs", esModule = embed "../../.build/edge/worker.mjs"),
    (name = ".build/edge/runtime.mjs", esModule = embed "../../.build/edge/runtime.mjs"),
    (name = ".build/edge/wasm_exec.js", esModule = embed "../../.build/edge/wasm_exec.js"),
    (name = ".build/edge/app.wasm", wasm = embed "../../.build/edge/app.wasm"),
  ],
  bindings = [(name = "ALLOWED_ORIGINS", text = "")],
  compatibilityDate = "2026-03-01",
);
