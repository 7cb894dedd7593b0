package look_test

import (
	"testing"

	"fyne.io/fyne/v2"

	"tarpside/ui/look"
)

func TestOnlyATextInStrangeLettersIsLookedForInOtherFonts(t *testing.T) {
	for text, strange := range map[string]bool{
		"Battery cutter, 4 x 16 in": false, "Žofie Ångström": false, "Ελένη": false, "Ольга": false,
		"“4 of 12” – more…": false, "救助": true, "عربي": true, "\U0001F692": true,
	} {
		for _, bold := range []bool{false, true} {
			if got := look.Face(text, fyne.TextStyle{Bold: bold}) == nil; got != strange {
				t.Errorf("%q, bold %t: looked for elsewhere %t, want %t", text, bold, got, strange)
			}
		}
	}
}
