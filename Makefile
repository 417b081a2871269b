# make serve    installs what is missing, builds the app into dist/ and serves it on this machine
# make dev      the same, built quickly and again at each saving, for whoever works on it
# make test     everything that can be checked; .ci/run calls it
# make help     the rest
#
# Needs rustup, make and a package manager. Whatever is already there in the right version is used; the rest goes
# into .tools/ and node_modules/, except what only the package manager can bring, which is said before it is done.

SHELL := /bin/bash
.SHELLFLAGS := -eu -o pipefail -c
.DEFAULT_GOAL := help
MAKEFLAGS += --no-print-directory
.NOTPARALLEL:

# The pinned tools. Trunk.toml, Cargo.toml and package.json name the same versions.
RUST := 1.95.0
WASM_BINDGEN := 0.2.129
TRUNK := 0.21.14
WASM_SPLIT := 0.2.3
GECKODRIVER := 0.37.1
NODE := 22.23.3
NODE_LEAST := 20

PORT ?= 8017
BOOKS ?= 1000
WASM := wasm32-unknown-unknown
TOOLS := $(CURDIR)/.tools
export PATH := $(TOOLS)/bin:$(CURDIR)/node_modules/.bin:$(HOME)/.cargo/bin:$(PATH)
export PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD := 1
NATIVE := --locked
SOURCES := $(shell find src style public -type f) Cargo.toml Cargo.lock Trunk.toml package-lock.json
GENERATORS := $(filter-out %/ics.py,$(wildcard tests/reference/generate/*.py))
REQUIREMENTS := tests/reference/generate/requirements.txt

# A newer or older compiler warns about other things: the pinned one is used, and installed where it is not the default.
ifneq ($(shell PATH="$(PATH)" rustc --version 2>/dev/null | cut -d' ' -f2),$(RUST))
export RUSTUP_TOOLCHAIN := $(RUST)
endif

# The app carries the names of the files that it was built from: without the folders of whoever built it.
NAMELESS := --remap-path-prefix=$(or $(CARGO_HOME),$(HOME)/.cargo)/registry/src= --remap-path-prefix=$(CURDIR)=

# What hangs together in the WebAssembly: public/build/split.mjs cuts it by that.
RELOCATIONS := -Clink-arg=--emit-relocs

# Tools that are used once: built in minutes rather than in a quarter of an hour.
QUICKLY := CARGO_PROFILE_RELEASE_LTO=off CARGO_PROFILE_RELEASE_CODEGEN_UNITS=16 \
	CARGO_PROFILE_RELEASE_OPT_LEVEL=0 CARGO_PROFILE_RELEASE_STRIP=true
# But for what reads the whole WebAssembly at each build of the app: optimised it takes 5 s of an unoptimised app, not 13.
READERS := $(foreach crate,walrus wasmparser wasm-encoder id-arena,--config profile.release.package.$(crate).opt-level=2)

.PHONY: help serve dist one-file dev withdraw test quick fmt clippy clippy-native test-native test-reference test-schema test-browser test-web test-engines size bench prove prove-merge prove-kills \
	screenshots icons tools system system-engines rust cargo-tools geckodriver node venv fetch clean

help: ## Says what each word does
	@awk -F ':.*## ' '/^[a-z-]+:.*## / { printf "make %-16s %s\n", $$1, $$2 }' Makefile

# ---- Building ----

serve: dist ## Builds the release app and serves it at a loopback address (PORT=8017)
	@node tests/web/server.mjs dist $(PORT)

# Trunk takes NO_COLOR=1 for a wrong argument.
TRUNK_BUILD := env -u NO_COLOR RUSTFLAGS="$(NAMELESS) $(RELOCATIONS)" trunk build
ONE_FILE := --features one-file

dist: tools $(if $(filter no,$(SPLIT)),one-file,dist/index.html) ## Builds the release app into dist/, ready for any plain static host; SPLIT=no in one file
	@echo "dist: the app is in dist/"

dist/index.html: $(SOURCES)
	@$(MAKE) tools fetch
	@echo "dist: building the release app"
	@$(TRUNK_BUILD)
	@touch $@

one-file: fetch
	@echo "dist: building the release app in one file"
	@SPLIT=no $(TRUNK_BUILD) $(ONE_FILE)
	@touch -d @0 dist/index.html # the next "make dist" is in several files again

dev: tools fetch ## Builds for whoever works on it, in one file and unoptimised, serves it, and builds again at each saving (PORT=8017)
	@mkdir -p target/dev
	@node tests/web/server.mjs target/dev $(PORT) & server=$$!; trap 'kill $$server' EXIT; \
	SPLIT=no env -u NO_COLOR trunk watch --release false $(ONE_FILE) --dist target/dev

withdraw: dist ## Makes dist/ the withdrawal of a bad release: deploy it, and phones forget the kept files
	@cp public/withdraw.js dist/sw.js
	@touch -d @0 dist/index.html
	@echo "withdraw: deploy dist/ (or its sw.js alone); the next 'make dist' builds an ordinary release again"

# ---- Checking ----

# What `make test` runs, in this order.
PARTS := fmt clippy test-native test-reference test-schema test-browser dist test-web test-engines size

test: tools fetch ## Everything below but prove, with the time of each part at the end
	@report=; TIMEFORMAT='%0R s of wall clock, %0U s and %0S s of processor time (user, system)'; \
	for part in $(PARTS); do \
		exec 3>&1; took=$$( { time $(MAKE) $$part >&3 2>&3; } 2>&1 ) || exit 1; \
		report="$$report$$(printf '%-16s' $$part)$$took"$$'\n'; \
	done; \
	printf '\n== time by part\n%s' "$$report"; \
	echo "test: all passed"

quick: fmt clippy-native test-native ## After a change: format, clippy and tests without a browser; needs Rust alone
	@echo "quick: passed"

fmt: rust ## The format of the code
	@echo "== cargo fmt"
	@cargo fmt --check

clippy-native: rust
	@echo "== clippy, native"
	@cargo clippy $(NATIVE) --all-targets -- -D warnings

clippy: clippy-native ## Clippy with warnings denied, natively and for the browser
	@echo "== clippy, $(WASM)"
	@cargo clippy $(NATIVE) --target $(WASM) --lib --bins --test web -- -D warnings

test-native: rust ## The core, natively: rows, properties, invariants, worked examples
	@echo "== cargo test"
	@cargo test $(NATIVE)

test-reference: rust venv node ## Re-runs the generators of reference rows and compares them with what is committed
	@echo "== reference rows"
	@for generator in $(GENERATORS); do echo "$$generator --check"; $(TOOLS)/venv/bin/python "$$generator" --check; done
	@cargo test $(NATIVE) --quiet --test native calendar
	@$(TOOLS)/venv/bin/python tests/reference/generate/ics.py
	@node tests/reference/generate/ics.mjs
	@$(if $(GENERATORS),,echo "There is no generator in tests/reference/generate/."; exit 1)

test-schema: venv rust ## Generated books, judged by public/book.schema.json (BOOKS=1000)
	@echo "== the schema of files"
	@cargo build $(NATIVE) --quiet --example books
	@cargo run $(NATIVE) --quiet --example books lines $(BOOKS) | $(TOOLS)/venv/bin/python tests/schema/check.py $(BOOKS)
	@cargo run $(NATIVE) --quiet --example books cells $(BOOKS) | python3 tests/schema/cells.py $(BOOKS)

test-browser: tools $(TOOLS)/webdriver.json ## Parts and storage in a headless Chromium (wasm-bindgen-test)
	@echo "== wasm-bindgen-test in Chromium"
	@CHROMEDRIVER="$$(command -v chromedriver)" WASM_BINDGEN_TEST_WEBDRIVER_JSON=$(TOOLS)/webdriver.json \
		CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUNNER=wasm-bindgen-test-runner \
		cargo test $(NATIVE) --target $(WASM) --test web

test-web: dist venv ## The built app end to end at phone size (Playwright), prints measured; SPEC=pwa runs one
	@echo "== Playwright"
	@playwright test -c tests/web $(SPEC)

test-engines: dist system-engines geckodriver ## A short journey in Chromium, Firefox and WebKit; ENGINE=Firefox takes it in one
	@echo "== the journeys of every engine"
	@node tests/web/engines/run.mjs

size: dist ## What each file weighs; fails over the budget
	@node tests/web/size.mjs

bench: dist ## Start without a server, also of a large book; what merging costs in the page (RUNS=11)
	@node tests/web/bench.mjs
	@node tests/web/opening.mjs
	@node tests/web/merging.mjs

prove: export PROPTEST_CASES ?= 20000
prove: export BOOKS = 10000
prove: export WEB_REPEAT ?= 3
prove: export AT_LENGTH ?= yes
prove: test prove-merge prove-kills ## As test, at length: more cases a property, all fields with all inputs, every browser test three times, a million histories, 500 kills

prove-merge: rust ## A million merge histories, mutated files, rows and lists (HISTORIES, MUTATIONS), and what merging costs
	@echo "== merging, at length"
	@HISTORIES=$${HISTORIES:-1000000} FIRST_SEED=$${FIRST_SEED:-$$(date +%s)000} MUTATIONS=$${MUTATIONS:-1000000} \
		cargo test $(NATIVE) --profile prove --test native -- --nocapture random_histories scribbled_over
	@cargo run $(NATIVE) --quiet --profile prove --example books speed 1000 10000 100000

prove-kills: dist ## Kills a browser while it writes, 500 times (KILLS, SEED): what was shown as saved has to be there
	@echo "== killing the browser"
	@node tests/web/kills.mjs

screenshots: dist ## Takes the installer's pictures from the real app into public/screenshots/
	@node tests/web/screenshots.mjs

icons: node ## Draws the icons again
	@node public/build/icons.mjs

clean: ## Removes what was built; tools stay
	@rm -rf dist target test-results

# ---- Tools ----

tools: system rust cargo-tools node ## Installs whatever of the tools is missing, pinned

# What only the package manager can bring, in the first lines of a recipe: command, then Debian's name for it.
define NEED
missing=; \
need() { command -v "$$1" >/dev/null || missing="$$missing $$2"; }
endef

# The last lines: installs what is missing, or says its name.
define INSTALL
[ -z "$$missing" ] && exit 0; \
if ! command -v apt-get >/dev/null; then \
	echo "tools: please install what Debian calls$$missing with your package manager, then call make again"; exit 1; fi; \
sudo=; [ "$$(id -u)" = 0 ] || sudo=sudo; \
echo "tools: installing$$missing with apt-get"; \
$$sudo apt-get update -qq; \
$$sudo env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends ca-certificates $$missing
endef

system:
	@$(NEED); \
	need cc build-essential; need node nodejs; need npm npm; need chromedriver chromium-driver; \
	[ -n "$${CHROMIUM:-}" ] || command -v chromium chromium-browser google-chrome >/dev/null || missing="$$missing chromium"; \
	python3 -c 'import venv, ensurepip' 2>/dev/null || missing="$$missing python3-venv"; \
	$(INSTALL)

# What the other engines' journeys need besides. The bindings belong to the distribution's Python, whatever else is on PATH.
system-engines: system
	@$(NEED); \
	need WebKitWebDriver webkit2gtk-driver; need Xvfb xvfb; \
	[ -n "$${FIREFOX:-}" ] || command -v firefox-esr firefox >/dev/null || missing="$$missing firefox-esr"; \
	/usr/bin/python3 -c 'import gi; gi.require_version("WebKit2", "4.1")' 2>/dev/null || missing="$$missing python3-gi gir1.2-webkit2-4.1"; \
	$(INSTALL)

rust:
	@if ! rustc --version >/dev/null 2>&1; then \
		echo "tools: installing Rust $(RUST) with rustup"; \
		rustup toolchain install $(RUST) --profile minimal --component rustfmt --component clippy; fi
	@rustfmt --version >/dev/null 2>&1 && cargo clippy --version >/dev/null 2>&1 || rustup component add rustfmt clippy
	@[ -d "$$(rustc --print sysroot)/lib/rustlib/$(WASM)" ] || rustup target add $(WASM)

cargo-tools: system rust
	@if [ "$$(wasm-bindgen --version 2>/dev/null | cut -d' ' -f2)" != $(WASM_BINDGEN) ] || ! command -v wasm-bindgen-test-runner >/dev/null; then \
		echo "tools: building wasm-bindgen $(WASM_BINDGEN) into .tools/ (about two minutes)"; \
		$(QUICKLY) cargo install --locked --quiet --root $(TOOLS) $(READERS) wasm-bindgen-cli@$(WASM_BINDGEN); fi
	@if [ "$$(trunk --version 2>/dev/null | cut -d' ' -f2)" != $(TRUNK) ]; then \
		echo "tools: building trunk $(TRUNK) into .tools/ (about three minutes)"; \
		$(QUICKLY) cargo install --locked --quiet --root $(TOOLS) trunk@$(TRUNK) --no-default-features --features rustls; fi
	@if [ "$$(cat $(TOOLS)/wasm-split 2>/dev/null)" != $(WASM_SPLIT) ]; then \
		echo "tools: building wasm-split-cli $(WASM_SPLIT) into .tools/ (about a minute)"; \
		$(QUICKLY) cargo install --locked --quiet --root $(TOOLS) --features build-binary wasm_split_cli_support@$(WASM_SPLIT); \
		echo $(WASM_SPLIT) >$(TOOLS)/wasm-split; fi

geckodriver: system rust
	@if [ "$$(geckodriver --version 2>/dev/null | awk 'NR == 1 { print $$2 }')" != $(GECKODRIVER) ]; then \
		echo "tools: building geckodriver $(GECKODRIVER) into .tools/ (about two minutes)"; \
		$(QUICKLY) cargo install --locked --quiet --root $(TOOLS) geckodriver@$(GECKODRIVER); fi

node: system $(TOOLS)/node.ready node_modules/.package-lock.json

# Debian 12's Node.js is too old for Playwright: then a newer one goes into .tools/.
$(TOOLS)/node.ready: | system
	@mkdir -p $(TOOLS)/bin
	@if [ "$$(node -p 'process.versions.node.split(".")[0]')" -lt $(NODE_LEAST) ]; then \
		echo "tools: installing Node.js $(NODE) into .tools/"; \
		npm install --no-audit --no-fund --silent --prefix $(TOOLS)/node node@$(NODE); \
		ln -sf $(TOOLS)/node/node_modules/node/bin/node $(TOOLS)/bin/node; fi
	@node --version >$@

node_modules/.package-lock.json: package.json package-lock.json $(TOOLS)/node.ready
	@echo "tools: installing the packages of package-lock.json into node_modules/"
	@npm ci --ignore-scripts --no-audit --no-fund --silent
	@touch $@

venv: system $(if $(wildcard $(REQUIREMENTS)),$(TOOLS)/venv/ready)

$(TOOLS)/venv/ready: $(REQUIREMENTS)
	@echo "tools: installing what the generators need into .tools/venv/"
	@python3 -m venv --clear $(TOOLS)/venv
	@$(TOOLS)/venv/bin/pip install --quiet --disable-pip-version-check -r $(REQUIREMENTS)
	@touch $@

$(TOOLS)/webdriver.json: tests/web/webdriver.json | system
	@mkdir -p $(TOOLS)
	@browser=$${CHROMIUM:-$$(command -v chromium || command -v chromium-browser || command -v google-chrome)}; \
	sed "s#/usr/bin/chromium#$$browser#" $< >$@

# Trunk builds offline: the crates have to be there before. Costs nothing when they are.
fetch: rust
	@cargo fetch --locked --quiet
