package judge_test

import "testing"

// The rest of a line may lie in a kit that has moved since: then a correct is
// a plain move, and what the kit's trip did to the line stands.
func TestACorrectIsNoUndoOnceAKitWithMoreOfTheLineHasMoved(t *testing.T) {
	scripts(t, map[string]string{
		"one of two out, the other away in its kit": `
			take_out SAW home>tarp             -> ok
			hand SAW tarp>at:V1                -> ok
			direct BOX home>at:BANK            -> ok straight_off
			return BOX at:BANK>tarp            -> ok
			correct SAW at:V1>tarp             -> ok
			stow SAW tarp>home read=unused     -> refused was_issued`,
		"nothing else moved": `
			take_out SAW home>tarp             -> ok
			hand SAW tarp>at:V1                -> ok
			correct SAW at:V1>tarp             -> ok
			stow SAW tarp>home read=unused     -> ok`,
	})
}
