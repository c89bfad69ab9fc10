# Two commands do everything on a fresh machine with Python 3.11+:  make demo   make test
PYTHON ?= python3
VENV   := .venv
BIN    := $(VENV)/bin
PIP    := $(BIN)/python -m pip install --quiet --disable-pip-version-check -c constraints.txt

.PHONY: demo test check bench docs clean

demo: $(VENV)/.installed
	$(BIN)/hoodwright warm
	$(BIN)/hoodwright demo

test: $(VENV)/.installed-test
	tools/browser-for-tests
	$(BIN)/hoodwright warm
	$(BIN)/python -m pytest
	$(BIN)/python -m pytest tests/browser

check: $(VENV)/.installed-test
	$(BIN)/ruff check .
	$(BIN)/ruff format --check .
	$(BIN)/mypy src/hoodwright/air src/hoodwright/particles src/hoodwright/network src/hoodwright/hoods src/hoodwright/ducts src/hoodwright/units src/hoodwright/tasks src/hoodwright/workplace

bench: $(VENV)/.installed-test
	$(BIN)/python -m benchmarks

docs: $(VENV)/.installed-docs
	$(BIN)/python -m tools.make_docs
	$(BIN)/zensical build --clean

clean:
	rm -rf $(VENV) site .pytest_cache .hypothesis .ruff_cache .mypy_cache

$(VENV)/bin/python:
	@$(PYTHON) -c 'import sys; sys.exit(sys.version_info < (3, 11))' || { echo "hoodwright needs Python 3.11 or newer; say which with: make PYTHON=python3.12 $(MAKECMDGOALS)"; exit 1; }
	$(PYTHON) -m venv $(VENV)

$(VENV)/.installed: $(VENV)/bin/python pyproject.toml constraints.txt
	$(PIP) -e .
	@touch $@

$(VENV)/.installed-test: $(VENV)/bin/python pyproject.toml constraints.txt
	$(PIP) -e '.[test]'
	@touch $@ $(VENV)/.installed

$(VENV)/.installed-docs: $(VENV)/bin/python pyproject.toml constraints.txt
	$(PIP) -e '.[docs]'
	@touch $@ $(VENV)/.installed
