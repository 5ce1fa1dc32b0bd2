// Package service is the core behind HTTP: the same handler runs on a laptop and, compiled to WebAssembly, on an edge
// platform. It keeps no state, stores nothing, logs nothing and asks nobody; a request is answered from its own bytes.
//
//	POST /v1/{operation}  one question, JSON as package api has it ("op" may be left out): predict, check, limits, window, ...
//	POST /v1/table        many jobs as CSV, an answer or an error for each row
//	GET  /v1/materials, /v1/schema, /v1/version, /v1/health, /v1/openapi.json
//
// Whatever goes wrong is a problem document (RFC 9457) with a 4xx status; a failure of the core, which nobody has seen yet,
// is a 500.
package service
