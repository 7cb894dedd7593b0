package main

import (
	"strings"
	"testing"
)

func TestTheJournalIsWrittenToStandardOutput(t *testing.T) {
	d, _ := playedDesk(t, demoScene, "")
	out := d.must("journal")
	for _, want := range []string{"owner:R41", "at:V2", "with:MED9", `"R41-001"`} {
		if !strings.Contains(out, want) {
			t.Errorf("the journal does not say %s", want)
		}
	}
}
