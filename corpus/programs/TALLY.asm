; Counts the records and lines of the files that match a pattern (*.TXT without one), and copies each into
; a file of the same name that ends in BAK.
include equates.asm

        ld a, (0x5d)
        cp ' '
        jp nz, search
        ld hl, default
        ld de, 0x5d
        ld b, 11
        call copy
search: ld de, fcb
        ld c, 17
found:  call bdos
        inc a
        jp z, listed
        dec a                   ; the entry is one of four in the record at 0080h
        add a, a
        add a, a
        add a, a
        add a, a
        add a, a
        add a, 0x81
        ld l, a
        ld h, 0
        ex de, hl
        ld hl, (next)
        ex de, hl
        ld b, 11
        call copy
        ex de, hl
        ld (next), hl
        ld hl, files
        inc (hl)
        ld a, (hl)
        cp 16
        jp z, listed
        ld de, fcb
        ld c, 18
        jp found

listed: ld hl, table
        ld (next), hl
each:   ld a, (files)
        or a
        jp z, done
        dec a
        ld (files), a
        ld hl, (next)
        ld de, own
        inc de
        ld b, 11
        call copy
        ld (next), hl
        call reset
        ld hl, own
        inc hl
        ld b, 11
name:   ld a, (hl)
        and 0x7f
        call put
        inc hl
        dec b
        jp nz, name
        ld de, gap
        call say
        call tally
        call backup
        jp each

done:   ld de, total
        call say
        ld hl, (records)
        call number
        ld de, end
        call say
        jp 0

copy:   ld a, (hl)              ; B bytes from HL to DE
        ld (de), a
        inc hl
        inc de
        dec b
        jp nz, copy
        ret

reset:  xor a                   ; a control block that has not been opened yet
        ld hl, own
        ld (hl), a
        ld de, 12
        add hl, de
        ld b, 24
clean:  ld (hl), a
        inc hl
        dec b
        jp nz, clean
        ret

tally:  ld de, own
        ld c, 15
        call bdos
        ld hl, 0
        ld (lines), hl
        ld (count), hl
tally1: ld de, own
        ld c, 20
        call bdos
        or a
        jp nz, tally4
        ld hl, (count)
        inc hl
        ld (count), hl
        ld hl, (records)
        inc hl
        ld (records), hl
        ld hl, buffer
        ld b, 128
tally2: ld a, (hl)
        cp 10
        jp nz, tally3
        push hl
        ld hl, (lines)
        inc hl
        ld (lines), hl
        pop hl
tally3: inc hl
        dec b
        jp nz, tally2
        jp tally1
tally4: ld hl, (count)
        call number
        ld de, recs
        call say
        ld hl, (lines)
        call number
        ld de, lins
        jp say

backup: call reset              ; open the source anew, make the other, and copy record by record
        ld hl, own
        ld de, other
        ld b, 9
        call copy
        ld hl, bak
        ld b, 3
        call copy
        ld hl, own
        ld de, 12
        add hl, de
        ld de, other
        push hl
        ld hl, 12
        add hl, de
        ex de, hl
        pop hl
        ld b, 24
        call copy
        ld de, other
        ld c, 19
        call bdos
        ld de, other
        ld c, 22
        call bdos
        inc a
        ld de, full
        jp z, say
        ld de, own
        ld c, 15
        call bdos
copy1:  ld de, own
        ld c, 20
        call bdos
        or a
        jp nz, copy2
        ld de, other
        ld c, 21
        call bdos
        or a
        jp z, copy1
        ld de, full
        call say
copy2:  ld de, other
        ld c, 16
        call bdos
        ld de, kept
        jp say

files:  db 0
next:   dw table
records: dw 0
count:  dw 0
lines:  dw 0
default: db "????????TXT"
bak:    db "BAK"
gap:    db ": $"
recs:   db " records, $"
lins:   db " lines$"
kept:   db ", copied", 13, 10, "$"
full:   db ", not copied: the disk is full", 13, 10, "$"
total:  db "Records in all: $"
end:    db 13, 10, "$"
include common.asm
own:    dw 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0
other:  dw 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0
table:  db 0                    ; sixteen names follow, beyond the program
