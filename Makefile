# Scarfwright. `make` alone lists the targets. Needs Go and make; Node only to
# build the page script (never to run the tool), gcc only for the race detector.

SHELL := bash
.SHELLFLAGS := -euo pipefail -c
.DEFAULT_GOAL := help
.DELETE_ON_ERROR:
MAKEFLAGS += --no-print-directory

GO ?= go
ADDR ?= 127.0.0.1:8321
FUZZTIME ?= 30s
RAPID_CHECKS ?= 2000

# The version goes into every paper printed. No git, no tag: "dev".
VERSION := $(shell git describe --tags --always --dirty 2>/dev/null || echo dev)
LDFLAGS := -s -w -X scarfwright/internal/cli.Version=$(VERSION)
# No cgo: one file to copy. Trimmed paths: the same source gives the same bytes.
BUILD := CGO_ENABLED=0 $(GO) build -trimpath -buildvcs=false -ldflags '$(LDFLAGS)'

.PHONY: help
help: ## list the targets
	@awk -F ':.*## ' '/^[a-z][a-z-]*:.*## / {printf "  make %-9s %s\n", $$1, $$2}' $(MAKEFILE_LIST)

.PHONY: run
run: build ## build, then serve the demo jobs on http://127.0.0.1:8321 (ADDR=host:port)
	bin/scarfwright serve --demo --addr $(ADDR)

.PHONY: build
build: web ## build bin/scarfwright: one static file with the pages in it
	$(BUILD) -o bin/scarfwright ./cmd/scarfwright

# ---- the page script and style ---------------------------------------------
WEB := internal/web
WEB_SRC := $(wildcard $(WEB)/src/*.ts $(WEB)/src/*.css)
NPM := $(shell command -v npm 2>/dev/null)
# esbuild comes as a Go tool, so that the style is built without Node too. The
# browsers named are what a phone kept in a yard may still have.
ESBUILD := $(GO) tool esbuild --bundle --minify --log-level=warning --legal-comments=none \
	--target=es2020,chrome87,firefox78,safari15

.PHONY: web
web: $(WEB)/dist/app.js $(WEB)/dist/app.css ## build the page script and style into internal/web/dist

$(WEB)/dist/app.css: $(WEB)/src/app.css Makefile
	$(ESBUILD) $< --outfile=$@

ifneq ($(NPM),)
# npm writes this file last: it is there when the install is whole.
NODE_MODULES := $(WEB)/node_modules/.package-lock.json
$(NODE_MODULES): $(WEB)/package.json $(WEB)/package-lock.json
	cd $(WEB) && npm ci --ignore-scripts
	@touch $@

$(WEB)/dist/app.js: $(WEB_SRC) $(NODE_MODULES) Makefile
	$(ESBUILD) $(WEB)/src/app.ts --outfile=$@
else
NODE_MODULES :=
$(WEB)/dist/app.js: $(WEB_SRC) Makefile
	@echo 'npm (part of Node.js) was not found, so the pages are built without htmx:'
	@echo 'everything works, each action loads a whole page. Install Node.js and run make again for the rest.'
	$(ESBUILD) $(WEB)/src/page.ts --outfile=$@
endif

# ---- checks ----------------------------------------------------------------
.PHONY: test
test: types ## vet, type-check, and the fast tests
	$(GO) vet ./...
	$(GO) test -short ./...

.PHONY: types
types: $(NODE_MODULES) ## type-check the page script (skipped with a word when Node is missing)
ifneq ($(NPM),)
	cd $(WEB) && node_modules/.bin/tsc --noEmit -p .
else
	@echo 'npm was not found: the page script is not type-checked'
endif

# Flags known to one package only would stop the others, hence the lists.
RAPID_PKGS = $$($(GO) list -f '{{range .TestImports}}{{.}} {{end}}{{range .XTestImports}}{{.}} {{end}}@{{.ImportPath}}' ./... | sed -n 's/.*pgregory.net\/rapid .*@//p')
GOLDEN_PKGS = $$(grep -rlE --include='*_test.go' 'flag\.Bool(Var)?\(.*"update"' . | xargs -r -n1 dirname | sort -u)

.PHONY: test-all
test-all: web types ## everything: long tests, browser, RAPID_CHECKS per property, race detector on the pure shelves
	$(GO) vet ./...
	SCARFWRIGHT_LONG=1 $(GO) test -timeout 40m ./...
	pkgs="$(RAPID_PKGS)"; [ -z "$$pkgs" ] || $(GO) test -timeout 40m $$pkgs -rapid.checks=$(RAPID_CHECKS)
	if [ "$$(CGO_ENABLED=1 $(GO) env CGO_ENABLED)" = 1 ] && command -v gcc >/dev/null; then \
	  CGO_ENABLED=1 $(GO) test -short -race -timeout 40m $$($(GO) list ./physics/... ./repair/... ./present/...); \
	else echo 'gcc was not found: the race detector was not run'; fi

.PHONY: fuzz
fuzz: ## run each fuzz target for FUZZTIME (30s)
	@grep -rHoE --include='*_test.go' '^func Fuzz[A-Za-z0-9_]+' . | sed 's/:func / /' | sort | \
	while read -r file name; do \
	  echo "== $$(dirname "$$file") $$name"; \
	  $(GO) test -run='^$$' -fuzz="^$$name\$$" -fuzztime=$(FUZZTIME) "$$(dirname "$$file")" </dev/null; \
	done

.PHONY: golden
golden: ## rewrite the golden files, then show which changed: read the diff before committing it
	pkgs="$(GOLDEN_PKGS)"; [ -z "$$pkgs" ] || $(GO) test $$pkgs -update
	git --no-pager diff --stat

.PHONY: bench
bench: ## run the benchmarks, kept in out/bench-VERSION.txt for comparison
	@mkdir -p out
	$(GO) test -run='^$$' -bench=. -benchmem ./... | tee out/bench-$(VERSION).txt | grep -v '^?'

# The linter is built once into bin/tools. It is not in go.mod: its some 200
# modules are nobody's business who only builds the tool.
LINT_VERSION := v2.15.0
LINT := bin/tools/golangci-lint-$(LINT_VERSION)

.PHONY: lint
lint: $(LINT) ## golangci-lint with the rules and reasons of .golangci.yml
	$(LINT) run ./...

$(LINT):
	@mkdir -p $(@D)
	GOBIN=$(CURDIR)/$(@D) GOFLAGS= $(GO) install github.com/golangci/golangci-lint/v2/cmd/golangci-lint@$(LINT_VERSION)
	mv $(@D)/golangci-lint $@

# ---- releases --------------------------------------------------------------
.PHONY: cross
cross: web ## build for linux (amd64, arm64), windows and mac into bin/
	GOOS=linux   GOARCH=amd64 $(BUILD) -o bin/scarfwright-linux-amd64 ./cmd/scarfwright
	GOOS=linux   GOARCH=arm64 $(BUILD) -o bin/scarfwright-linux-arm64 ./cmd/scarfwright
	GOOS=windows GOARCH=amd64 $(BUILD) -o bin/scarfwright-windows-amd64.exe ./cmd/scarfwright
	GOOS=darwin  GOARCH=arm64 $(BUILD) -o bin/scarfwright-darwin-arm64 ./cmd/scarfwright

.PHONY: clean
clean: ## remove what the targets above made
	rm -rf bin out $(WEB)/node_modules $(WEB)/dist/app.js $(WEB)/dist/app.css
