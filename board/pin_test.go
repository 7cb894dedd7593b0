package board_test

import (
	"bytes"
	"errors"
	"os"
	"testing"
	"time"

	"tarpside/board"
)

func TestWithoutAPINNobodyIsAskedForOne(t *testing.T) {
	b := newTablet(t, "A")
	if has, err := b.HasPIN(); has || err != nil {
		t.Fatalf("a new file has a PIN: %v, %v", has, err)
	}
	if err := b.CheckPIN("1234"); err != nil {
		t.Errorf("without a PIN: %v", err)
	}
}

func TestAPINHoldsOverAStartIsChangedOnlyByWhoKnowsItAndIsNeverKeptPlain(t *testing.T) {
	b := newTablet(t, "A")
	for _, bad := range []string{"123", "123456789", "12a4", "12 4"} {
		if err := b.SetPIN("", bad); !errors.Is(err, board.ErrPINShape) {
			t.Errorf("%q as a PIN: %v", bad, err)
		}
	}
	if err := b.SetPIN("", "40962718"); err != nil {
		t.Fatal(err)
	}
	if err := b.Close(); err != nil {
		t.Fatal(err)
	}
	data, err := os.ReadFile(b.path)
	if err != nil {
		t.Fatal(err)
	}
	if bytes.Contains(data, []byte("40962718")) || !bytes.Contains(data, []byte("pbkdf2-sha256$")) {
		t.Error("the file has the PIN itself, or nothing of it")
	}
	b.open(t)
	if err := b.CheckPIN("40962718"); err != nil {
		t.Errorf("the right PIN after a start: %v", err)
	}
	if err := b.SetPIN("1111", "2222"); !errors.Is(err, board.ErrPIN) {
		t.Errorf("changed by a wrong one: %v", err)
	}
	if err := b.SetSetting("officer-pin", ""); err == nil {
		t.Error("taken away as if it were any setting")
	}
	if err := b.SetPIN("40962718", "2222"); err != nil {
		t.Fatal(err)
	}
	if err := b.CheckPIN("40962718"); !errors.Is(err, board.ErrPIN) {
		t.Errorf("the old PIN still holds: %v", err)
	}
	if err := b.SetPIN("2222", ""); err != nil {
		t.Fatal(err)
	}
	if has, err := b.HasPIN(); has || err != nil {
		t.Errorf("taken away, and still there: %v, %v", has, err)
	}
}

func TestAfterFiveWrongPINsTheRightOneWaitsAMinute(t *testing.T) {
	b := newTablet(t, "A")
	if err := b.SetPIN("", "7777"); err != nil {
		t.Fatal(err)
	}
	for range 5 {
		if err := b.CheckPIN("1111"); !errors.Is(err, board.ErrPIN) {
			t.Fatal(err)
		}
	}
	if err := b.CheckPIN("7777"); !errors.Is(err, board.ErrPINWait) {
		t.Errorf("the sixth try: %v", err)
	}
	b.clock.passes(time.Minute)
	if err := b.CheckPIN("7777"); err != nil {
		t.Errorf("a minute later: %v", err)
	}
}
