package judge_test

import "testing"

// The numbers in the names are those of the contract of a scene's rows.

func TestAnActThatMakesNoSenseIsRefusedAsBadRow(t *testing.T) {
	scripts(t, map[string]string{
		"quantities": `
			pull CONE home>tarp                -> ok            # blank is one
			: CONE tarp=1 home=5
			pull CONE 0 home>tarp              -> refused bad_row
			pull CONE -2 home>tarp             -> refused bad_row
			count CONE 0 tarp>                 -> warned short
			count CONE -1 tarp>                -> refused bad_row
			count CONE tarp>                   -> refused unanswered
			count CONE bagged>                 -> refused bad_row
			check CONE 0 read=clean=yes        -> refused bad_row`,
		"an item must be named": `
			pull home>tarp                     -> refused bad_row
			count 2                            -> refused bad_row
			settle >tarp                       -> refused bad_row
			check read=clean=yes               -> refused bad_row
			override by=CHIEF read=clean       -> refused bad_row
			tag                                -> refused bad_row
			repair                             -> refused bad_row
			match                              -> refused bad_row`,
		"places": `
			pull LIGHT home>at:V1              -> refused bad_row
			direct LIGHT home>tarp             -> refused bad_row
			pull LIGHT home>                   -> refused bad_row
			pull LIGHT >tarp                   -> refused bad_row
			pull LIGHT shelf>tarp              -> refused bad_row
			direct LIGHT home>at:              -> refused bad_row
			seen LIGHT home>tarp:2             -> refused bad_row
			take_out LIGHT home>tarp           -> refused bad_row   # it lives in no kit
			pull SAW kit:LIGHT>tarp            -> refused bad_row   # no kit
			pull SAW kit:BAG>tarp              -> refused not_there # a kit, but not its own
			pull SAW home>tarp                 -> ok                # home is its kit
			: SAW kit:BOX=1 tarp=1
			stow SAW tarp>kit:BAG              -> refused bad_row   # not its own kit
			move SAW at:V1>at:V1               -> refused bad_row
			correct SAW tarp>tarp              -> refused bad_row
			carry SAW tarp>riding:R1           -> refused bad_row   # its own rig
			carry SAW tarp>riding:R9           -> refused bad_row   # no rig of that name
			carry SAW tarp>riding:R2           -> ok
			seen SAW riding:R2>riding:R1       -> refused bad_row
			stow SAW kit:BOX>home              -> refused bad_row`,
		"a rig that arrived under a new name is a rig": `
			direct LIGHT home>at:V1            -> ok straight_off
			carry LIGHT at:V1>riding:X9        -> refused bad_row
			vouch rig=X9                       -> refused bad_row
			arrive rig=X9                      -> warned new_rig
			arrive rig=X9                      -> ok
			carry LIGHT at:V1>riding:X9        -> ok
			release rig=X9                     -> warned carries_others
			leave rig=X9                       -> warned carries_others
			vouch rig=X9                       -> ok
			accept by=NEIGH rig=X9             -> ok`,
		"an unknown verb": `
			fly LIGHT home>tarp                -> refused bad_row`,
	})
}

func TestAPieceInNoTableIsKeptInWordsUntilItIsSettled(t *testing.T) {
	scripts(t, map[string]string{
		"rule 9": `
			pull SLEDGE home>tarp              -> warned unknown_item
			count SLEDGE 2                     -> warned unknown_item
			close                              -> warned open_differences
			settle SLEDGE                      -> warned unknown_item
			settle SLEDGE note=ours            -> ok
			close                              -> ok`,
		"rows about no item do not read one": `
			note SLEDGE note=heard             -> ok
			look SLEDGE                        -> ok
			arrive SLEDGE rig=R2               -> ok
			leave SLEDGE rig=R2                -> ok
			pull NLIGHT home>tarp              -> warned rig_back
			stow NLIGHT tarp>home              -> ok
			close                              -> ok`,
		"a new scene forgets it": `
			pull SLEDGE home>tarp              -> warned unknown_item
			open                               -> ok
			close                              -> ok`,
	})
}

func TestEachMovingVerbMovesAndMarks(t *testing.T) {
	scripts(t, map[string]string{
		"out and back": `
			pull LIGHT home>tarp               -> ok
			pull LIGHT home>tarp               -> refused not_there   # a double tap
			hand LIGHT tarp>at:V1 hold=Crew1   -> ok
			: LIGHT at:V1=1 holder@at:V1=Crew1
			move LIGHT at:V1>at:V2             -> ok
			: LIGHT at:V2=1 holder@at:V2=
			return LIGHT at:V2>tarp            -> ok
			stow LIGHT tarp>home               -> ok
			unstow LIGHT home>tarp             -> ok
			: LIGHT tarp=1`,
		"13 of 12": `
			pull CONE 6 home>tarp              -> ok
			hand CONE 7 tarp>at:V1             -> refused not_there
			: CONE tarp=6 at:V1=0`,
		"a holder is who the last row named": `
			pull CONE 4 home>tarp              -> ok
			hand CONE 2 tarp>at:V1 hold=Crew1  -> ok
			hand CONE 1 tarp>at:V1 hold=Crew2  -> ok
			: CONE holder@at:V1=Crew2
			accept by=CHIEF rig=R1 hold=Crew3  -> ok
			: CONE holder@at:V1=Crew2
			hand CONE 1 tarp>at:V1             -> ok
			: CONE at:V1=4 holder@at:V1=`,
		"straight off, short, two people": `
			direct CONE 4 home>at:V1           -> ok straight_off
			return CONE 3 at:V1>tarp           -> warned short_return
			return CONE at:V1>tarp             -> ok
			direct HEAVY home>at:V1            -> ok straight_off two_person
			pull LIMIT home>tarp               -> ok                  # 51 lb is not over 51
			pull PAIR home>tarp                -> ok two_person
			found PAIR tarp>at:V1              -> refused bad_row
			seen PAIR tarp>at:V1               -> warned log_was_wrong
			correct PAIR at:V1>tarp            -> ok`,
		"a kit weighs what is in it now": `
			pull BOX home>tarp                 -> ok two_person       # 26 lb and 25.5 in it
			take_out SAW kit:BOX>at:V1         -> ok
			take_out BAG home>tarp             -> ok                  # with what is in it
			: O2 kit:BAG=1
			hand BOX tarp>at:V1                -> ok
			stow BAG tarp>home                 -> refused kit_away`,
		"what is used comes back only as stock": `
			use TAPE 3 home>used               -> ok
			use LIGHT home>used                -> warned not_consumable
			restock TAPE 2 used>home           -> ok
			restock LIGHT used>home            -> ok
			restock TAPE 2 used>home           -> refused not_there`,
		"away with others": `
			pull LIGHT home>tarp               -> ok
			handover LIGHT tarp>with:MED9 hold=Medic -> ok
			: LIGHT with:MED9=1 holder@with:MED9=Medic
			take_back LIGHT with:MED9>tarp     -> ok
			carry LIGHT tarp>riding:R2         -> ok
			bag LIGHT riding:R2>bagged         -> ok
			clean LIGHT bagged>home            -> ok                  # it has no checks
			lend LIGHT home>with:anybody       -> ok
			bring_back LIGHT with:anybody>home -> ok
			charge LIGHT home>charging         -> ok
			recharge LIGHT charging>home       -> ok`,
		"looking for a piece": `
			direct CONE 3 home>at:V1           -> ok straight_off
			count CONE 1 at:V1>                -> warned short
			stop_looking CONE unexplained>lost -> refused not_officer
			stop_looking CONE by=NEIGH unexplained>lost -> refused not_officer
			stop_looking CONE by=CHIEF unexplained>lost -> ok
			locate CONE lost>with:MED9         -> ok
			found CONE unexplained>at:V2       -> ok
			: CONE at:V1=1 at:V2=1 with:MED9=1 unexplained=0 lost=0`,
		"a match takes extras off, and says when there are too few": `
			direct BLOCK 3 home>at:V1          -> ok straight_off
			count BLOCK 0 at:V1>               -> warned short
			count NBLOCK 5                     -> warned extra
			count NLIGHT 2                     -> warned extra        # another family
			count CONE 7                       -> warned extra        # another rig
			: NBLOCK extra=1
			match BLOCK 2 unexplained>riding:R2 -> warned no_extra
			: NBLOCK extra=0
			: NLIGHT extra=1
			: CONE extra=1
			: BLOCK riding:R2=2 unexplained=1
			match BLOCK read=NBLOCK            -> warned likely_swap
			match BLOCK read=NLIGHT            -> refused bad_row
			match BLOCK read=BLOCK             -> refused bad_row
			match BLOCK                        -> refused bad_row`,
	})
}

func TestARowFromARigThatHadLeftShowsThatItIsBack(t *testing.T) {
	table := map[string]string{
		"a piece whose kit is out does not": `
			pull BOX home>tarp                 -> ok two_person
			leave rig=R1                       -> warned items_out
			take_out SAW home>tarp             -> ok
			hand BOX tarp>at:V1                -> ok
			stow LIGHT tarp>home               -> refused not_there`,
		"a new scene forgets who has left": `
			leave rig=R1                       -> ok
			open                               -> ok
			pull LIGHT home>tarp               -> ok`,
	}
	for row, reply := range map[string]string{
		"pull LIGHT home>tarp": "warned rig_back", "direct LIGHT home>at:V1": "warned rig_back straight_off",
		"use TAPE home>used": "warned rig_back", "take_out SAW home>tarp": "warned rig_back",
		"handover LIGHT home>with:MED9": "warned rig_back", "lend LIGHT home>with:MED9": "warned rig_back",
		"unstow LIGHT home>tarp": "warned rig_back", "charge LIGHT home>charging": "warned rig_back",
		"bag LIGHT home>bagged": "warned rig_back", "carry NLIGHT tarp>riding:R1": "warned rig_back",
		"stow BLOCK tarp>home": "warned rig_back", "stow_tagged CONE tarp>home": "warned rig_back",
		"hand BLOCK tarp>at:V1": "ok", "seen LIGHT home>tarp": "warned log_was_wrong", "count LIGHT 0": "warned short",
		"carry BLOCK tarp>riding:R2": "warned rig_back", "tag LIGHT": "ok",
	} {
		table[row] = `
			pull NLIGHT home>tarp              -> ok
			pull BLOCK home>tarp               -> ok
			pull CONE home>tarp                -> ok
			tag CONE                           -> ok
			leave rig=R1                       -> warned items_out
			leave rig=R2                       -> warned items_out
			` + row + " -> " + reply + `
			arrive rig=R1                      -> ok
			seen LIMIT home>home               -> ok
			pull LIMIT home>tarp               -> ok`
	}
	scripts(t, table)
}

func TestAKitMovesWithAllItHolds(t *testing.T) {
	scripts(t, map[string]string{
		"rule 13": `
			direct BOX home>at:V1 hold=Crew1   -> ok straight_off two_person
			: O2 kit:BAG=1 past=yes holder@kit:BAG=Crew1
			: SAW kit:BOX=2 past=yes
			handover BOX at:V1>with:MED9       -> ok two_person
			leave rig=R1                       -> warned open_items
			leave rig=MED9                     -> warned agency_has_items
			leave rig=NOBODY                   -> refused bad_row
			bring_back BOX with:MED9>home      -> warned not_ready unread_inside
			: O2 kit:BAG=1 doubt=1 open=oxygen ready=0
			: BOX home=1 doubt=1 open=count`,
	})
}
