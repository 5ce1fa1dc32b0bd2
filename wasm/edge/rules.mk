# The service on an edge platform: its files in .build/edge, the page beside it in .build/edge-page.

# What of the service nobody feels the speed of, either; see UNHURRIED.
EDGE_UNHURRIED := net/... mime/... crypto/... vendor/... github.com/drywright/drywright/wasm/... github.com/syumai/workers/...

EDGE     := $(OUT)/edge
EDGE_NPM := wasm/edge/node_modules/.installed
# The platform takes 3 MB of a free account; ours is lower, so that there is room [bytes, gzip -9].
EDGE_LIMIT := 2500000

edge: $(EDGE)/app.wasm $(OUT)/edge-page/_headers ## build the service for an edge platform, and fail where it is too large: .build/edge
	@size=$$(gzip -9 < $< | wc -c); echo "the service: $$size bytes of at most $(EDGE_LIMIT), compressed"; [ $$size -le $(EDGE_LIMIT) ]

$(EDGE)/app.wasm: $(core_sources) $(wildcard wasm/edge/*.go wasm/edge/service/*.go wasm/slim/*.go cure/words/languages/*) wasm/edge/rules.mk $(OUT)/toolchain
	$(GO) run github.com/syumai/workers/cmd/workers-assets-gen -mode=go -o $(EDGE)
	GOEXPERIMENT=nogreenteagc GOOS=js GOARCH=wasm $(GO) build -trimpath -ldflags "-s -w" $(UNHURRIED:%=-gcflags=%=-l) $(EDGE_UNHURRIED:%=-gcflags=%=-l) \
	  -o $@ ./wasm/edge
	$(GO) run ./wasm/slim $@

$(OUT)/edge-page/_headers: $(DIST) $(wildcard wasm/edge/headers/*.go wasm/edge/service/*.go)
	rm -rf $(@D) && cp -r site/dist $(@D)
	$(GO) run ./wasm/edge/headers > $@

$(EDGE_NPM): wasm/edge/package.json wasm/edge/package-lock.json $(OUT)/toolchain
	cd wasm/edge && $(NPM) ci --no-audit --no-fund --loglevel=error
	@touch $@

edge-dev: edge $(EDGE_NPM) ## serve it in the platform's own runtime on this machine (PORT=8417)
	@exec $(NODE) wasm/edge/platform.mjs --port $(PORT)

edge-test: edge $(BINARY) $(EDGE_NPM) ## the service natively and in the platform's runtime: the answers of the command, hostile requests, its size
	DRYWRIGHT=$(abspath $(BINARY)) $(NODE) --test --test-reporter=spec wasm/edge/edge.test.mjs

load: edge $(BINARY) $(EDGE_NPM) ## what the service carries on this machine, natively and in the platform's runtime
	DRYWRIGHT=$(abspath $(BINARY)) $(NODE) wasm/edge/load.mjs

.PHONY: edge edge-dev edge-test load
