package main

import (
	"strings"
	"testing"
	"time"

	"tarpside/board"
)

// opened is the desk's department file, open.
func opened(d *desk) *board.Board {
	d.t.Helper()
	b, err := board.Open(d.db, board.Options{Now: func() time.Time { return d.now }, Random: d.random})
	if err != nil {
		d.t.Fatal(err)
	}
	return b
}

func TestAForgottenPINIsTakenAwayAtADesk(t *testing.T) {
	d := newDesk(t)
	d.must("stores", "load", demoTables)
	if out := d.must("pin", "clear"); !strings.HasPrefix(out, "No officer's PIN is set") {
		t.Errorf("without a PIN: %q", out)
	}
	b := opened(d)
	if err := b.SetPIN("", "4096"); err != nil {
		t.Fatal(err)
	}
	b.Close()
	d.must("pin", "clear")
	b = opened(d)
	defer b.Close()
	if has, err := b.HasPIN(); has || err != nil {
		t.Errorf("still there: %v, %v", has, err)
	}
	d.fails(misused, "pin", "show")
}
