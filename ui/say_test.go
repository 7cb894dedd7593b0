package ui

import "testing"

// The plurals are of the English language, as its dictionaries have them.
func TestMoreThanOneIsSaidInThePlural(t *testing.T) {
	for one, more := range map[string]string{
		"step chock": "step chocks", "crib block 4x4x20": "crib blocks 4x4x20", "spring punch": "spring punches",
		"adult pouch": "adult pouches", "saw leg chaps": "saw leg chaps", "oxygen mask, child": "oxygen masks, child",
		"cord battery": "cord batteries", "relay": "relays", "hinged strut foot": "hinged strut feet",
		"drinking water": "drinking water", "glass knife": "glass knives", "chain 8 ft": "chains 8 ft", "ramp box": "ramp boxes",
	} {
		if got := many(one); got != more {
			t.Errorf("more than one %s is %q, want %q", one, got, more)
		}
	}
}
