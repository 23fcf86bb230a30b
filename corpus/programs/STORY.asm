; The Skerry Light: a story in seven rooms. It reads lines and prints paragraphs broken at 78 columns.
include equates.asm

        ld de, title
        call say
show:   call newline
        call room
        ld e, (hl)
        inc hl
        ld d, (hl)
        call say
        ld a, (here)            ; the can stands in the oil store until it is taken
        cp 2
        jp nz, ask
        ld a, (can)
        or a
        ld de, canhere
        call z, say

ask:    call newline
        ld de, prompt
        call say
        call askline
        ld hl, compass
        ld b, 6
look:   cp (hl)
        jp z, go
        inc hl
        dec b
        jp nz, look
        cp 'L'
        jp z, show
        cp 'T'
        jp z, take
        cp 'P'
        jp z, pour
        cp 'K'
        jp z, kindle
        cp 'I'
        jp z, have
        cp 'H'
        ld de, help
        jp z, tell
        cp 'Q'
        jp z, quit
        ld de, huh
tell:   call say
        jp ask

go:     ld a, 6                 ; the exits stand behind the text, in the order of the compass
        sub b
        ld e, a
        ld d, 0
        call room
        inc hl
        inc hl
        add hl, de
        ld a, (hl)
        cp 255
        ld de, wall
        jp z, tell
        ld (here), a
        jp show

room:   ld a, (here)            ; HL points to the room: eight bytes each
        add a, a
        add a, a
        add a, a
        ld l, a
        ld h, 0
        ld bc, rooms
        add hl, bc
        ret

take:   ld a, (here)
        cp 2
        ld de, nothing
        jp nz, tell
        ld a, (can)
        or a
        ld de, nothing
        jp nz, tell
        inc a
        ld (can), a
        ld de, taken
        jp tell

pour:   ld a, (here)
        cp 4
        ld de, noplace
        jp nz, tell
        ld a, (can)
        cp 1
        ld de, nooil
        jp nz, tell
        inc a
        ld (can), a
        ld de, poured
        jp tell

kindle: ld a, (here)
        cp 4
        ld de, noplace
        jp nz, tell
        ld a, (can)
        cp 2
        ld de, dry
        jp nz, tell
        ld de, won
        call say
        jp 0

have:   ld a, (can)
        cp 1
        ld de, empty
        jp nz, tell
        ld de, full
        jp tell

quit:   ld de, bye
        call say
        jp 0

here:   db 0
can:    db 0
compass: db "NSEWUD"
rooms:  dw landing
        db 1, 255, 255, 255, 255, 255
        dw foot
        db 255, 0, 2, 3, 5, 255
        dw store
        db 255, 255, 255, 1, 255, 255
        dw kitchen
        db 255, 255, 1, 255, 255, 255
        dw lamp
        db 6, 255, 255, 255, 255, 5
        dw stair
        db 255, 255, 255, 255, 4, 1
        dw gallery
        db 255, 4, 255, 255, 255, 255

title:  db 13, 10, "THE SKERRY LIGHT", 13, 10
        db "A story of one night, told on a rock in the sea. Type H for help.", 13, 10, "$"
prompt: db "What now? $"
huh:    db "The gulls laugh. Type H to see which words they know.", 13, 10, "$"
wall:   db "There is no way on that side, only stone and weather.", 13, 10, "$"
help:   db "Words: N S E W U D to walk; LOOK, TAKE, POUR, KINDLE, INVENTORY, QUIT. The", 13, 10
        db "first letter of each is enough. The lamp must burn before the tide turns.", 13, 10, "$"
nothing: db "You find nothing here that you could carry up a stair.", 13, 10, "$"
taken:  db "You lift the can by its wire handle. It is full, and heavier than it looks.", 13, 10, "$"
noplace: db "Not here: the lamp stands at the top of the tower.", 13, 10, "$"
nooil:  db "You have nothing to pour.", 13, 10, "$"
poured: db "The oil goes into the font of the lamp, down to the last drop, and the wick", 13, 10
        db "drinks it with a small sound. The can is empty now.", 13, 10, "$"
dry:    db "The wick glows, smokes and dies: the font of the lamp is dry.", 13, 10, "$"
won:    db "The flame climbs, steadies and fills the lens. Far out a steamer answers with", 13, 10
        db "one long note and bears away to the north. The Skerry Light is lit. You may", 13, 10
        db "sleep now.", 13, 10, "$"
empty:  db "You carry a box of matches and the key of the tower.", 13, 10, "$"
full:   db "You carry a box of matches, the key of the tower and a can of oil.", 13, 10, "$"
bye:    db "The boat takes you off in the morning. The log book says nothing of it.", 13, 10, "$"
canhere: db "A can of oil stands by the door.", 13, 10, "$"

landing: db "You stand on the landing stage, where the relief boat ties up when the swell", 13, 10
        db "allows it. Weed hangs from the iron ladder, and the water breathes up and down", 13, 10
        db "between the piles. Cut into the rock, a flight of sixty steps leads north to", 13, 10
        db "the foot of the tower. The lamp above is dark, and it should not be.", 13, 10, "$"
foot:   db "You are at the foot of the tower. The door is as thick as your arm is long,", 13, 10
        db "and stands open. A low door leads east into the oil store, another west, from", 13, 10
        db "where it smells of soup. An iron stair winds up along the wall. South, the", 13, 10
        db "steps go down to the landing stage.", 13, 10, "$"
store:  db "You are in the oil store. Nine tanks stand along the wall, each with its gauge", 13, 10
        db "and its brass plate: FIRST QUARTER, SECOND QUARTER and so on to the last, on", 13, 10
        db "which somebody has written KEEP YOUR FEET DRY, TAM. The way out is west.", 13, 10, "$"
kitchen: db "You are in the kitchen. A pot hangs over the stove, a pair of boots beside it,", 13, 10
        db "and on the table lies the log book, open at yesterday: WIND NW 6, SEA ROUGH,", 13, 10
        db "LAMP TRIMMED AT FOUR, MAREN HAS A COLD. The tower is east.", 13, 10, "$"
stair:  db "You climb the iron stair. A hundred and twelve steps, says the handbook; Maren", 13, 10
        db "counts a hundred and eleven. Through the slit windows you see the reef, white", 13, 10
        db "where the tide has begun to run. Up to the lamp, down to the foot.", 13, 10, "$"
lamp:   db "You are in the lamp room. The lens stands around you like a house of glass,", 13, 10
        db "taller than a man, and in the midst of it the lamp, cold. A card hangs from a", 13, 10
        db "nail: POUR, THEN KINDLE, THEN WRITE IT DOWN. A small door leads north to the", 13, 10
        db "gallery, the stair down.", 13, 10, "$"
gallery: db "You are on the gallery, with both hands on the rail. The wind takes your", 13, 10
        db "breath. A steamer stands in from the west with all her lights burning, and she", 13, 10
        db "is holding straight for the reef. The lamp room is south.", 13, 10, "$"
include common.asm
