# Drywright. `make` lists what there is to make.
#
# The machine needs Go, Node (with npm), make and bash; all else is fetched, in the versions pinned here, in go.mod and
# in site/package-lock.json. Every target is incremental: nothing is built twice for the same sources.

SHELL := bash
.SHELLFLAGS := -euo pipefail -c
.DEFAULT_GOAL := help
.DELETE_ON_ERROR:
MAKEFLAGS += --no-builtin-rules --no-print-directory

GO   ?= go
NODE ?= node
NPM  ?= npm
# Where `make run` serves the page; 0 takes any free port.
PORT ?= 8417

# What is built hangs on the sources alone, not on the state of the working copy.
export GOFLAGS := $(GOFLAGS) -buildvcs=false

# Pinned tools. Staticcheck 2026.1 is the release that knows Go 1.26.
STATICCHECK := honnef.co/go/tools/cmd/staticcheck@v0.7.0
GOVULNCHECK := golang.org/x/vuln/cmd/govulncheck@v1.1.4

OUT    := .build
BINARY := $(OUT)/drywright
# The programs that the core comes in for the browser.
WASM   := $(foreach program,core planner fitter,site/public/$(program).wasm)
# All of it in one program, for the page in one file.
WHOLE  := $(OUT)/whole.wasm
EXEC   := site/public/wasm_exec.js
# What the core says in each language, as the page hands it over.
WORDS  := $(patsubst cure/words/languages/%.json,site/public/words/%.json,$(wildcard cure/words/languages/*.json))
TYPES  := site/src/generated/contract.ts
SCHEMA := site/src/generated/job.schema.json
TEXTS  := site/src/generated/words.ts
DIST   := site/dist/index.html
SINGLE := site/dist-single/drywright.html
PARTS  := site/src/generated/licences-go.json
PROOF  := site/src/generated/validation.json
PICTURE ?= $(OUT)/peers/accuracy.svg
NPM_CI := site/node_modules/.installed

# The Go packages by name, so that no tool walks into site/node_modules.
PACKAGES := ./cure/... ./wasm/slim ./wasm/edge/... ./site ./testdata
# The pure core, which runs in the browser: all of cure but its commands and the files of the languages.
CORE_PACKAGES = $$($(GO) list ./cure/... | grep -vE "/cure/(cmd/|words/languages)")

core_sources := go.mod go.sum $(shell find cure -type f -not -name '*_test.go' -not -path '*/testdata/*' -not -path 'cure/cmd/*' \
                -not -path 'cure/words/languages/*')
cmd_sources  := $(shell find cure/cmd/drywright site -maxdepth 1 -name '*.go' -not -name '*_test.go') site/policy.txt $(wildcard cure/words/languages/*)
site_sources := $(shell find site -type f -not -path '*/node_modules/*' -not -path 'site/dist/*' -not -path 'site/dist-single/*' -not -path 'site/tests/*' \
                -not -path '$(dir $(TYPES))*' -not -name '*.go' -not -name '*.wasm' -not -path '$(EXEC)' -not -path 'site/public/words/*') \
                $(wildcard testdata/invented-trials/*)

.PHONY: fuzz nightly bench peers help run build wasm types site single fmt sizes supply typing validate test test-format test-go test-wasm test-site browser-test clean FORCE

help: ## list the targets
	@grep -hE '^[a-z-]+:.*## ' $(MAKEFILE_LIST) | sed -E 's/:.*## /\t/' | expand -t 16

# ---- building -------------------------------------------------------------------------------------------------------

run: build ## build everything and serve the page (PORT=8417)
	@exec $(BINARY) serve --port $(PORT)

build: $(BINARY) ## build the command with the page in it: .build/drywright

wasm: $(WASM) $(EXEC) $(WORDS) ## build the core for the browser

types: $(TYPES) $(TEXTS) ## generate the TypeScript types, the JSON Schema and the types of the page's words

site: $(DIST) ## build the page into site/dist

single: $(SINGLE) ## build the page as one file that opens from disk: site/dist-single/drywright.html

# The WebAssembly and the script that starts it must come from one toolchain: a change of it rebuilds both.
$(OUT)/toolchain: FORCE
	@mkdir -p $(OUT); now="$$($(GO) version) $$($(NODE) --version)"; \
	[ "$$now" = "$$(cat $@ 2>/dev/null)" ] || echo "$$now" > $@

# In the programs that lead searches and fit trials, calls are not inlined in packages whose speed nobody feels: 50 kB of each. What
# solves film and air, gonum, the runtime and what all of them call (slices, math, sync/atomic) are left alone: without inlining there a
# prediction takes 40 % longer. What answers typing is inlined throughout, which makes it a twentieth faster.
PATIENT := planner fitter
UNHURRIED := $(addprefix github.com/drywright/drywright/,cure $(addprefix cure/,api derive fault fit job material plan regress report result route sim trial unit words)) \
             encoding/base64 encoding/json errors bytes fmt internal/fmtsort internal/poll internal/reflectlite internal/strconv \
             io io/fs os path reflect sort strconv strings syscall syscall/js time unicode/...

program_sources := $(core_sources) $(wildcard wasm/browser/*/*.go wasm/slim/*.go)
# The collector that Go had before 1.26 is 6 kB smaller, compressed, and these programs hold little.
define build-program
	@mkdir -p $(@D)
	GOEXPERIMENT=nogreenteagc GOOS=js GOARCH=wasm $(GO) build -trimpath -ldflags "-s -w" $(if $(filter $(PATIENT),$*),$(UNHURRIED:%=-gcflags=%=-l)) -o $@ ./wasm/browser/$*
	$(GO) run ./wasm/slim $@
endef

$(WASM): site/public/%.wasm: $(program_sources) $(OUT)/toolchain
	$(build-program)

$(WHOLE): $(OUT)/%.wasm: $(program_sources) $(OUT)/toolchain
	$(build-program)

$(WORDS): site/public/words/%.json: cure/words/languages/%.json
	@mkdir -p $(@D)
	$(NODE) -e "const { page, ...core } = JSON.parse(fs.readFileSync('$<', 'utf8')); fs.writeFileSync('$@', JSON.stringify(core))"

$(EXEC): $(OUT)/toolchain
	@mkdir -p $(@D)
	install -m 644 "$$($(GO) env GOROOT)/lib/wasm/wasm_exec.js" $@

$(TYPES): $(core_sources) $(wildcard cure/cmd/schema/*.go) $(OUT)/toolchain
	$(GO) run ./cure/cmd/schema -ts $(TYPES) -schema $(SCHEMA) -units $(dir $(TYPES))units.json
	@touch $@

$(PARTS): go.mod go.sum $(wildcard wasm/browser/*/*.go wasm/edge/*.go) site/scripts/go-licences.mjs $(OUT)/toolchain
	@mkdir -p $(@D)
	GO=$(GO) $(NODE) site/scripts/go-licences.mjs $@

$(TEXTS): $(wildcard cure/words/languages/*.json) $(wildcard site/vite/words/*.mjs) site/scripts/words.mjs
	$(NODE) site/scripts/words.mjs $@
	@touch $@

# What the page shows of the published numbers: without those that take minutes. A miss is shown too, and ends make validate.
$(PROOF): $(core_sources) $(wildcard cure/cmd/validate/*.go) $(wildcard testdata/*/*.json) $(OUT)/toolchain
	@mkdir -p $(@D)
	@$(GO) run ./cure/cmd/validate -quick -page $@ -build "$$(cat $(core_sources) | sha256sum | cut -c1-8)" || [ -s $@ ]

$(NPM_CI): site/package.json site/package-lock.json $(OUT)/toolchain
	cd site && $(NPM) ci --no-audit --no-fund --loglevel=error
	@touch $@

$(DIST): $(site_sources) $(TYPES) $(TEXTS) $(PARTS) $(PROOF) $(WASM) $(EXEC) $(WORDS) $(NPM_CI)
	cd site && $(NPM) run --silent build
	@touch $@

$(SINGLE): $(site_sources) $(TYPES) $(TEXTS) $(PARTS) $(WHOLE) $(EXEC) $(WORDS) $(NPM_CI)
	cd site && $(NPM) run --silent single
	@touch $@

$(BINARY): $(core_sources) $(cmd_sources) $(DIST)
	@mkdir -p $(@D)
	$(GO) build -trimpath -tags page -o $@ ./cure/cmd/drywright

fmt: $(NPM_CI) ## format all sources
	gofmt -w cure wasm testdata/*.go $(wildcard site/*.go)
	cd site && $(NPM) run --silent format

sizes: $(DIST) $(SINGLE) ## print what the browser has to load, compressed, and fail where it is too much
	@cd site && $(NPM) run --silent sizes

clean: ## remove everything that was built (not the fetched packages)
	rm -rf $(OUT) site/dist site/dist-single $(WASM) $(EXEC) $(dir $(TYPES))

include wasm/edge/rules.mk

# ---- checking -------------------------------------------------------------------------------------------------------

validate: ## print every published number beside ours, and fail on a miss
	@$(GO) run ./cure/cmd/validate

# How long each target is fuzzed. What breaks one is kept beside it, under testdata/fuzz, and replayed by every test. The last
# lines of each target tell its executions; of one that breaks, all lines are shown.
FUZZ_TIME ?= 30s
fuzz: ## fuzz every target for a while each (FUZZ_TIME=30s)
	@mkdir -p $(OUT); count=0; \
	for file in $$(grep -rl '^func Fuzz' --include='*_test.go' cure wasm | sort); do \
	  for target in $$(grep -oE '^func Fuzz[A-Za-z]+' $$file | cut -d' ' -f2); do \
	    echo "== $$(dirname $$file) $$target"; count=$$((count + 1)); \
	    $(GO) test ./$$(dirname $$file) -run '^$$' -fuzz "^$$target\$$" -fuzztime $(FUZZ_TIME) > $(OUT)/fuzz.log 2>&1 || { cat $(OUT)/fuzz.log; exit 1; }; \
	    tail -3 $(OUT)/fuzz.log; \
	  done; done; \
	echo "== $$count targets"; [ $$count -gt 0 ]

# How many random jobs, from which seed on, and after how many the log says how it stands. A million takes two hours of one core.
JOBS ?= 100000
FROM ?= 0
PART ?= 100000
nightly: ## random jobs over the whole accepted range: balances, bounds, order of marks (JOBS=100000 FROM=0)
	@bad=0; last=$$(($(FROM) + $(JOBS))); for ((seed = $(FROM); seed < last; seed += $(PART))); do \
	  $(GO) test ./cure/sim -run RandomJobs -v -timeout 24h -from $$seed -jobs $$((seed + $(PART) < last ? $(PART) : last - seed)) || bad=1; \
	done; exit $$bad

# How often each benchmark runs. The least time counts; benchstat wants six or more to tell two builds apart.
COUNT ?= 3
bench: ## benchmarks natively and in WebAssembly, with their growth over cells, zones, samples and points (COUNT=3)
	$(GO) run ./cure/cmd/bench -out $(OUT)/bench -count $(COUNT)

# Debian's packages are installed where they are missing and the user may do so.
peers: ## our integrator beside CVODE and SciPy on the same equations: work against accuracy
	@cc -xc -fsyntax-only -include cvode/cvode.h /dev/null 2>/dev/null && /usr/bin/python3 -c 'import scipy' 2>/dev/null || \
	{ apt-get update -q && DEBIAN_FRONTEND=noninteractive apt-get install -y -q --no-install-recommends gcc libc6-dev libsundials-dev python3-scipy; }
	$(GO) run ./cure/cmd/peers -out $(OUT)/peers -picture $(PICTURE)

supply: $(DIST) $(WHOLE) $(EDGE)/app.wasm $(EDGE_NPM) ## known weaknesses and licences of all parts, and whether the same sources give the same bytes
	@GO=$(GO) NPM=$(NPM) GOVULNCHECK=$(GOVULNCHECK) STRICT=$(STRICT) $(NODE) site/scripts/supply.mjs

typing: $(BINARY) $(NPM_CI) ## how fast the answer follows typing, measured in the browser
	@DRYWRIGHT=$(abspath $(BINARY)) CHROMIUM="$$(site/tests/browser/find.sh chromium)" $(NODE) site/tests/browser/typing.mjs

# One part after the other, each with its time, so that the log says what ran.
test: ## everything that must hold: formats, linters, Go, WebAssembly, page, service, browser
	@for part in test-format test-go test-wasm test-site edge-test browser-test; do \
	  echo; echo "==== $$part"; begun=$$SECONDS; $(MAKE) $$part || { echo "==== $$part FAILED"; exit 1; }; \
	  summary="$${summary:-}$$(printf '  %-13s passed, %4d s' $$part $$((SECONDS - begun)))"$$'\n'; \
	done; echo; echo "==== all tests passed"; printf '%s' "$$summary"

test-format: $(TYPES) ## gofmt, go vet, staticcheck, and what the core must not import
	@unformatted="$$(gofmt -l cure wasm testdata/*.go $(wildcard site/*.go))"; \
	[ -z "$$unformatted" ] || { echo "not formatted, run make fmt:"; echo "$$unformatted"; exit 1; }
	$(GO) vet $(PACKAGES)
	GOOS=js GOARCH=wasm $(GO) vet ./wasm/...
	$(GO) run $(STATICCHECK) $(PACKAGES)
	$(GO) run -exec 'env GOOS=js GOARCH=wasm' $(STATICCHECK) ./wasm/...
	@impure="$$($(GO) list -f '{{$$p := .ImportPath}}{{range .Imports}}{{$$p}} imports {{.}}{{"\n"}}{{end}}' $(CORE_PACKAGES) \
	  | grep -E ' imports (os|net|time|log|sync|embed|syscall|math/rand|io/fs)(/|$$)' || true)"; \
	[ -z "$$impure" ] || { echo "the core has no files, clock, network, chance or goroutines:"; echo "$$impure"; exit 1; }
	@! GOOS=js GOARCH=wasm $(GO) list -deps ./wasm/browser/... | grep -x net/http || \
	  { echo "net/http would add 2 MB to what the browser loads"; exit 1; }

test-go: ## the Go tests, natively
	$(GO) test -timeout 30m $(PACKAGES)

# The environment is cut down because the runtime's start-up area for arguments and environment is small.
test-wasm: $(WASM) $(EXEC) $(WORDS) ## the core's tests compiled to WebAssembly, on Node; then the browser's entry
	GOOS=js GOARCH=wasm $(GO) test -short -vet=off -timeout 30m \
	  -exec "env -i PATH=$$(dirname "$$(command -v $(NODE))"):/usr/bin:/bin HOME=$$HOME $$($(GO) env GOROOT)/lib/wasm/go_js_wasm_exec" \
	  $(CORE_PACKAGES)
	$(NODE) --test --test-reporter=spec wasm/browser/bridge_test.mjs wasm/browser/requests_test.mjs

test-site: $(TYPES) $(TEXTS) $(PROOF) $(NPM_CI) ## the page's types, linters and unit tests
	cd site && $(NPM) run --silent check && $(NPM) run --silent lint && $(NPM) run --silent test

# The whole in Chromium; in Firefox what stands on the browser most, since the numbers come from the same core and a search is no
# other there. All of it: make browser-test FIREFOX_TESTS='*.test.mjs'
FIREFOX_TESTS := page.test.mjs inputs.test.mjs languages.test.mjs offline.test.mjs single.test.mjs pictures.test.mjs trial.test.mjs
browser-test: $(BINARY) $(SINGLE) $(NPM_CI) ## the page in real browsers, against the command (FIREFOX_TESTS='*.test.mjs': all of it in Firefox, too)
	@chromium="$$(site/tests/browser/find.sh chromium)"; firefox="$$(site/tests/browser/find.sh firefox)"; \
	run() { echo "-- $$1"; DRYWRIGHT=$(abspath $(BINARY)) SINGLE=$(abspath $(SINGLE)) BROWSER=$$1 CHROMIUM="$$chromium" FIREFOX="$$firefox" \
	  $(NODE) --test --test-reporter=spec --test-concurrency=1 "$${@:2}"; }; \
	cd site/tests/browser && run chromium *.test.mjs && run firefox $(FIREFOX_TESTS)
