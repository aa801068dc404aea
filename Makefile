# Two commands matter to a newcomer: `make site` and `make test`. Both install what they need into .venv.
PYTHON ?= python3
VENV := .venv
BIN := $(VENV)/bin
# Node and npm come with the packages of the tests.
NODE := PATH="$(CURDIR)/$(BIN):$$PATH"
PIP := $(BIN)/python -m pip --disable-pip-version-check --quiet

# Without byte code, every worker and every command that a test starts would compile all of it again.
unexport PYTHONDONTWRITEBYTECODE

.PHONY: site pocket test test-fast proof serve check lint pictures bench bench-lighthouse bench-engines lock clean

site: $(VENV)/.site
	$(BIN)/latchside site

pocket: $(VENV)/.site
	$(BIN)/latchside pocket

serve: $(VENV)/.site
	$(BIN)/latchside serve

check: $(VENV)/.site
	$(BIN)/latchside check

test: $(VENV)/.test
	$(BIN)/python scripts/bring_browser.py
	$(BIN)/python scripts/bring_webkit.py
	$(BIN)/python -m pytest --numprocesses auto --dist loadfile --no-loadscope-reorder

# While you work: what needs no browser, no built site and not many plans; it says how many tests it leaves out.
test-fast: $(VENV)/.test
	$(BIN)/python -m pytest --numprocesses logical --dist loadfile -m "not slow" tests/unit tests/published

# What is tried by chance, tried far more often; where some of many like pages or surveys are looked at, all of them:
# before a release, and after a change of the planner, the templates or the style.
proof: $(VENV)/.test
	LATCHSIDE_LONG=1 $(BIN)/python -m pytest --numprocesses logical --dist worksteal tests/unit tests/published \
	  tests/browser/test_visits_kept.py tests/browser/test_visits_meaning.py tests/browser/test_fault_run.py \
	  tests/browser/test_visits_in_hand.py tests/browser/test_offline_pocket.py tests/browser/test_reading.py \
	  tests/browser/test_using.py tests/site/test_build.py tests/site/test_markup.py

lint: $(VENV)/.test node_modules/.installed
	$(BIN)/ruff check scripts tests
	$(BIN)/ruff format --check scripts tests
	$(BIN)/mypy
	$(NODE) npm run --silent lint

# What a reviewer looks at: build/pictures/index.html.
pictures: $(VENV)/.test
	$(BIN)/latchside site
	$(BIN)/python scripts/bring_browser.py
	$(BIN)/python scripts/pictures.py

# A quarter of an hour, and nothing else on the machine.
bench: $(VENV)/.test
	$(BIN)/latchside site
	$(BIN)/python scripts/bench.py
	$(BIN)/python scripts/bench_order.py
	$(BIN)/python scripts/bench_jobs.py
	$(BIN)/python scripts/bench_faults.py site
	$(BIN)/python scripts/bench_onsite.py
	$(BIN)/python scripts/bench_visits.py site
	$(BIN)/python scripts/bench_planner.py site

# Needs npm, which fetches the tool.
bench-lighthouse: $(VENV)/.test
	$(BIN)/python scripts/bench_lighthouse.py

# Other site generators on the same pages, in an environment of their own.
bench-engines: $(VENV)/.test
	$(PYTHON) -m venv .cache/engines
	.cache/engines/bin/python -m pip --quiet install mkdocs-material properdocs zensical
	$(BIN)/python scripts/bench_engines.py $(CURDIR)/.cache/engines/bin

# Needs uv; run it after changing the dependencies in pyproject.toml.
LOCK = uv pip compile --quiet --universal --python-version 3.11 --generate-hashes --no-emit-index-url --no-header
lock:
	$(LOCK) pyproject.toml -o requirements.lock
	$(LOCK) --extra test pyproject.toml -o requirements-test.lock

clean:
	rm -rf $(VENV) node_modules site .cache .browsers

$(VENV)/.python:
	$(PYTHON) -m venv $(VENV)
	touch $@

$(VENV)/.site: requirements.lock pyproject.toml | $(VENV)/.python
	$(PIP) install --require-hashes -r requirements.lock
	$(PIP) install --no-deps --no-build-isolation -e .
	touch $@

$(VENV)/.test: requirements-test.lock $(VENV)/.site
	$(PIP) install --require-hashes -r requirements-test.lock
	touch $@

node_modules/.installed: package-lock.json package.json $(VENV)/.test
	$(NODE) npm ci --silent
	touch $@
