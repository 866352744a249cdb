# Gloamline. `make run` opens the window on a demo journal; `make test` is what CI runs.
#
#   make run        build, and open the window (without a display: draw the demo night into out/)
#   make build      build/gloamline and build/gloam
#   make test       everything that must hold, the real window last
#   make check      gofmt and vet only
#   make bench      all benchmarks
#   make chance     tests of random cases, CASES of each, drawn anew
#   make fuzz       each decoder of outside bytes for FUZZTIME
#   make pictures   the pictures of the README, from the demo journal
#   make vision     the night as seen without one kind of cone, and in grey, into out/vision
#   make truth      how often a season's figures claim what is not so, in a made-up world (SEASONS=500)
#   make clean      remove build/ and out/

SHELL       := bash
.SHELLFLAGS := -euo pipefail -c
.ONESHELL:
.SILENT:
.DEFAULT_GOAL := help
.PHONY: help run build window gloam test check quick chance race e2e bench fuzz pictures vision truth clean go need need-test

# GL ES bindings build in 22 s where those of GL 2.1 take 3 minutes, for the same
# picture; x11 spares a hard dependency on Wayland's libraries.
TAGS     := x11,gles
FUZZTIME ?= 60s
SEASONS  ?= 500
VERSION  ?= $(shell git describe --tags --always --dirty 2>/dev/null || echo unversioned)
LDFLAGS  := -X main.version=$(VERSION)

# Without a home of one's own, Go keeps its caches in build/ (hidden, so that ./...
# does not walk into them) and the demo journal goes there too.
ifneq ($(shell test -n "$${HOME:-}" && test -d "$$HOME" && test -w "$$HOME" && echo yes),yes)
  HOMELESS := yes
  export HOME := $(CURDIR)/build/.home
  export XDG_DATA_HOME ?= $(CURDIR)/build/data
  export GOCACHE ?= $(CURDIR)/build/.go/cache
  export GOMODCACHE ?= $(CURDIR)/build/.go/mod
  export GOPATH ?= $(CURDIR)/build/.go
  export GOFLAGS := $(GOFLAGS) -modcacherw
endif

# Test packages are tested without cgo and, by tag ci, without the system's fonts.
QUICK := CGO_ENABLED=0 go test -tags ci
# Packages whose tests draw cases at random.
DRAWN := CGO_ENABLED=0 go list -tags ci -test -f '{{if eq .Name "main"}}{{range .Deps}}{{if eq . "pgregory.net/rapid"}}{{$$.ImportPath}}{{"\n"}}{{end}}{{end}}{{end}}' ./... | sed -n 's/\.test$$//p'
SEED  ?= 20260612
CASES ?= 1000
# Packages in which more than one goroutine works, or may.
RACE  := ./journal/store ./ui/draw/... ./timeline ./ui/state

help:
	sed -n 's/^#   //p' Makefile

go:
	mkdir -p build out $(if $(HOMELESS),"$(HOME)")
	.ci/need go

run: go
	if [ -n "$(HOMELESS)" ]; then
	  mkdir -p build/data
	  echo "There is no home folder to write to: caches and the demo journal go into build/ instead."
	fi
	if ! .ci/need display; then
	  echo "Drawing the demo night's page into out/ instead. The first time this builds for a minute or two."
	  CGO_ENABLED=0 go build -ldflags "$(LDFLAGS)" -o build/gloam ./cmd/gloam
	  rm -f out/night*.png out/night*.pdf out/night*.svg # gloam sheet writes over nothing
	  for kind in png pdf svg; do build/gloam sheet --demo -o out/night.$$kind; done
	  exit 0
	fi
	.ci/need packages
	$(MAKE) --no-print-directory window
	exec build/gloamline -demo

window: go
	if [ ! -x build/gloamline ]; then
	  echo "Building Gloamline. The first time this takes two to three minutes, nearly all of it for the"
	  echo "window toolkit and its C parts (printed as they are built); after that, seconds."
	  go build -v -tags $(TAGS) -ldflags "$(LDFLAGS)" -o build/gloamline ./cmd/gloamline 2>&1 | grep -E --line-buffered '^(fyne|github.com/go-gl|gloamline|#|[^ ]+\.go:)' || [ "$${PIPESTATUS[0]}" = 0 ]
	else
	  go build -tags $(TAGS) -ldflags "$(LDFLAGS)" -o build/gloamline ./cmd/gloamline
	fi

gloam: go
	CGO_ENABLED=0 go build -ldflags "$(LDFLAGS)" -o build/gloam ./cmd/gloam

build: need window gloam
	echo "build/gloamline and build/gloam are built."

need: go
	.ci/need packages
need-test: go
	.ci/need packages tests

test: need-test check quick race e2e
	.ci/need count build/test-*.log

check: go
	echo "== gofmt and vet"
	bad=$$(gofmt -l cmd ui journal geo timeline assets)
	if [ -n "$$bad" ]; then echo "gofmt would change:"; echo "$$bad"; exit 1; fi
	CGO_ENABLED=0 go vet -tags ci,e2e ./...

# -v for the count at the end; what passes is not printed.
SHOW := grep -Ev '^ *(=== (RUN|PAUSE|CONT|NAME)|--- PASS)|\[no test files\]$$|^PASS$$' || true

quick: go
	echo "== tests and laws, without cgo (the window toolkit is built once, about a minute and a half)"
	rm -f build/test-*.log
	drawn=$$($(DRAWN))
	others=$$(CGO_ENABLED=0 go list -tags ci ./... | grep -vxF "$$drawn")
	{ rc=0; $(QUICK) -v $$drawn -rapid.seed=$(SEED) || rc=1; $(QUICK) -v $$others || rc=1; exit $$rc; } 2>&1 | tee build/test-quick.log | { $(SHOW); }

# What is merged must not hang on a draw: there the cases are drawn from one seed. Here
# they are others each time, and many more.
chance: go
	CGO_ENABLED=0 go test -tags ci -timeout 60m $$($(DRAWN)) -rapid.checks=$(CASES) | { $(SHOW); }

race: go
	echo "== the race detector, where goroutines meet"
	packages=$$(CGO_ENABLED=0 go list -tags ci -f '{{if or .TestGoFiles .XTestGoFiles}}{{.ImportPath}}{{end}}' $(RACE))
	drawn=$$($(DRAWN) | grep -xF "$$packages")
	others=$$(grep -vxF "$$drawn" <<<"$$packages" || true)
	export CGO_ENABLED=1
	{ rc=0; go test -race -v -short -tags ci $$drawn -rapid.seed=$(SEED) || rc=1; [ -z "$$others" ] || go test -race -v -short -tags ci $$others || rc=1; exit $$rc; } 2>&1 | tee build/test-race.log | { $(SHOW); }

e2e: window
	echo "== the real window under Xvfb"
	GLOAMLINE=$(CURDIR)/build/gloamline OUT=$(CURDIR)/out/e2e CGO_ENABLED=0 go test -count=1 -v -tags e2e -timeout 20m ./cmd/gloamline/e2e 2>&1 | tee build/test-e2e.log | { $(SHOW); }
	if [ -f out/e2e/speed.txt ]; then cat out/e2e/speed.txt; fi

# With PLAY=1h the night is played over and over for so long, the heap told every five
# minutes, to see what grows.
bench: go
	$(QUICK) -run '^$$' -bench . -benchmem ./...
	if .ci/need packages tests; then
	  $(MAKE) --no-print-directory window
	  GLOAMLINE=$(CURDIR)/build/gloamline OUT=$(CURDIR)/out/e2e CGO_ENABLED=0 go test -count=1 -v -tags e2e -timeout 90m -run TestSpeed ./cmd/gloamline/e2e | { $(SHOW); }
	fi

fuzz: go
	for f in $$(grep -rlE '^func Fuzz' --include='*_test.go' cmd ui journal geo timeline assets | sort); do
	  for name in $$(sed -nE 's/^func (Fuzz[A-Za-z0-9_]*)\(.*/\1/p' $$f); do
	    echo "== $$name in $$(dirname $$f)"
	    CGO_ENABLED=0 go test -run '^$$' -fuzz "^$$name\$$" -fuzztime $(FUZZTIME) -fuzzminimizetime 2s ./$$(dirname $$f)
	  done
	done

pictures: need-test window gloam
	GLOAMLINE=$(CURDIR)/build/gloamline GLOAM=$(CURDIR)/build/gloam PICTURES=$(CURDIR)/assets/picture OUT=$(CURDIR)/out/pictures CGO_ENABLED=0 go test -count=1 -v -tags e2e -timeout 8m -run Pictures ./cmd/gloamline/e2e

vision: go
	$(QUICK) -count=1 ./ui/scene -run TestDrawVisions -vision $(CURDIR)/out/vision
	echo "The pictures are in out/vision."

truth: go
	echo "== $(SEASONS) seasons for each of seven truths; a quarter of an hour on two cores"
	CGO_ENABLED=0 nice go test -count=1 -timeout 3h ./timeline -run 'TestTruth$$' -truth $(SEASONS) -v | grep -vE '^(===|---|PASS|ok)'

clean:
	rm -rf build out
