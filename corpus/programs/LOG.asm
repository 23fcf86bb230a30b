; Prints the log of the light, broken between words at the width that the reader chooses, with a stop after
; each entry: a program that has a setting for the small screen.
include equates.asm

        ld de, title
        call say
choose: ld de, prompt
        call say
        call askline
        ld b, 79
        cp '8'
        jp z, chosen
        ld b, 39
        cp '4'
        jp nz, choose
chosen: ld a, b
        ld (width), a
        ld hl, entries
entry:  ld a, (hl)
        or a
        jp z, 0
        call flow
        push hl
        call newline
        ld de, next
        call say
        call key
        cp 'Q'
        push af
        call newline
        pop af
        pop hl
        jp z, 0
        jp entry

flow:   xor a                   ; print the words from HL up to a dollar sign
        ld (column), a
word:   ld a, (hl)
        cp '$'
        jp z, last
        push hl
        ld b, 0                 ; how long is the word?
size:   ld a, (hl)
        cp ' '
        jp z, sized
        cp '$'
        jp z, sized
        inc hl
        inc b
        jp size
sized:  pop hl
        ld a, (column)
        or a
        jp z, first
        add a, b
        ld c, a
        ld a, (width)
        cp c                    ; a blank and the word fit where the width is more than column and word
        jp z, broken
        jp nc, blank
broken: call newline
        xor a
        ld (column), a
        jp first
blank:  ld a, ' '
        call put
        ld a, (column)
        inc a
        ld (column), a
first:  ld a, (column)
        add a, b
        ld (column), a
letters: ld a, (hl)
        call put
        inc hl
        dec b
        jp nz, letters
        ld a, (hl)
        cp ' '
        jp nz, word
        inc hl
        jp word
last:   inc hl
        ret

width:  db 0
column: db 0
title:  db 13, 10, "LOG OF THE SKERRY LIGHT", 13, 10, "$"
prompt: db "Columns of your screen (40 or 80)? $"
next:   db "(any key, Q to close the book) $"
entries: db "First of November. Wind north-west, six, and a sea that throws weed over the gallery rail. Lamp lit at a quarter past four. The steamer for the islands passed at seven and was slow to answer the horn. M. Oddy.$"
        db "Second of November. Wind the same, and the same weed. Tam counted the stairs again and makes it a hundred and eleven, as before. We have agreed to differ. Two pints of oil spilled, and entered as such. T. Grieve.$"
        db "Third of November. Calm, all at once, and so still that the clockwork of the lens could be heard down in the kitchen. Nobody slept well. I. Sallow.$"
        db "Fourth of November. The boat came with flour, letters and a new wick, and took away the pig. M. Oddy.$"
        db 0
include common.asm
