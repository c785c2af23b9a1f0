;; Pixels of three 8-bit channels through a grid of up to four outputs by tetrahedral interpolation: convert-grid3.ts
;; says how, and the test holds the two against each other, bit for bit. Here the four outputs of a node are added up at
;; once, and nothing branches on the picture. All addresses and steps are in bytes.
(module
  (memory (export "memory") 1)
  (func (export "convert")
    (param $source i32) (param $sourceStep i32)
    (param $target i32) (param $targetStep i32)
    (param $pixels i32)
    ;; Three tables of 256 pairs, an offset into the nodes and a weight of 0 to 2^13, one behind the other.
    (param $axes i32)
    ;; Four 16-bit numbers each.
    (param $nodes i32)
    (param $xStep i32) (param $yStep i32) (param $zStep i32)
    (param $outputs i32)
    (local $entry i32) (local $node i32) (local $swaps i32) (local $kept i32)
    (local $high i32) (local $middle i32) (local $low i32)
    (local $first i32) (local $second i32) (local $third i32)
    (local $codes v128)
    (block $done
      (loop $next
        (br_if $done (i32.eqz (local.get $pixels)))

        ;; The cell's first node, and the place within the cell along each axis.
        (local.set $entry
          (i32.add (local.get $axes) (i32.shl (i32.load8_u (local.get $source)) (i32.const 3))))
        (local.set $node (i32.add (local.get $nodes) (i32.load (local.get $entry))))
        (local.set $high (i32.load offset=4 (local.get $entry)))
        (local.set $entry
          (i32.add (local.get $axes) (i32.shl (i32.load8_u offset=1 (local.get $source)) (i32.const 3))))
        (local.set $node (i32.add (local.get $node) (i32.load offset=2048 (local.get $entry))))
        (local.set $middle (i32.load offset=2052 (local.get $entry)))
        (local.set $entry
          (i32.add (local.get $axes) (i32.shl (i32.load8_u offset=2 (local.get $source)) (i32.const 3))))
        (local.set $node (i32.add (local.get $node) (i32.load offset=4096 (local.get $entry))))
        (local.set $low (i32.load offset=4100 (local.get $entry)))

        ;; The largest first, each with the step along its axis: that is the way through the cell's tetrahedron.
        (local.set $first (local.get $xStep))
        (local.set $second (local.get $yStep))
        (local.set $third (local.get $zStep))
        (local.set $swaps (i32.lt_s (local.get $high) (local.get $middle)))
        (local.set $kept (local.get $high))
        (local.set $high (select (local.get $middle) (local.get $high) (local.get $swaps)))
        (local.set $middle (select (local.get $kept) (local.get $middle) (local.get $swaps)))
        (local.set $kept (local.get $first))
        (local.set $first (select (local.get $second) (local.get $first) (local.get $swaps)))
        (local.set $second (select (local.get $kept) (local.get $second) (local.get $swaps)))
        (local.set $swaps (i32.lt_s (local.get $middle) (local.get $low)))
        (local.set $kept (local.get $middle))
        (local.set $middle (select (local.get $low) (local.get $middle) (local.get $swaps)))
        (local.set $low (select (local.get $kept) (local.get $low) (local.get $swaps)))
        (local.set $kept (local.get $second))
        (local.set $second (select (local.get $third) (local.get $second) (local.get $swaps)))
        (local.set $third (select (local.get $kept) (local.get $third) (local.get $swaps)))
        (local.set $swaps (i32.lt_s (local.get $high) (local.get $middle)))
        (local.set $kept (local.get $high))
        (local.set $high (select (local.get $middle) (local.get $high) (local.get $swaps)))
        (local.set $middle (select (local.get $kept) (local.get $middle) (local.get $swaps)))
        (local.set $kept (local.get $first))
        (local.set $first (select (local.get $second) (local.get $first) (local.get $swaps)))
        (local.set $second (select (local.get $kept) (local.get $second) (local.get $swaps)))

        ;; Nodes two by two beside their weights, so that one instruction multiplies and adds a pair.
        (local.set $second (i32.add (local.get $first) (local.get $second)))
        (local.set $third (i32.add (local.get $second) (local.get $third)))
        (local.set $codes
          (i32x4.add
            (i32x4.dot_i16x8_s
              (i8x16.shuffle 0 1 16 17 2 3 18 19 4 5 20 21 6 7 22 23
                (v128.load64_zero (local.get $node))
                (v128.load64_zero (i32.add (local.get $node) (local.get $first))))
              (i32x4.splat
                (i32.or
                  (i32.sub (i32.const 8192) (local.get $high))
                  (i32.shl (i32.sub (local.get $high) (local.get $middle)) (i32.const 16)))))
            (i32x4.dot_i16x8_s
              (i8x16.shuffle 0 1 16 17 2 3 18 19 4 5 20 21 6 7 22 23
                (v128.load64_zero (i32.add (local.get $node) (local.get $second)))
                (v128.load64_zero (i32.add (local.get $node) (local.get $third))))
              (i32x4.splat
                (i32.or
                  (i32.sub (local.get $middle) (local.get $low))
                  (i32.shl (local.get $low) (i32.const 16)))))))
        ;; 13 bits of weight and 6 of the nodes go; what lies beyond 0 to 255 is clipped while it is narrowed.
        (local.set $codes
          (i32x4.shr_s (i32x4.add (local.get $codes) (i32x4.splat (i32.const 0x40000))) (i32.const 19)))
        (local.set $codes (i16x8.narrow_i32x4_s (local.get $codes) (local.get $codes)))
        (local.set $codes (i8x16.narrow_i16x8_u (local.get $codes) (local.get $codes)))

        (if (i32.eq (local.get $outputs) (i32.const 4))
          (then (v128.store32_lane 0 (local.get $target) (local.get $codes)))
          (else
            (v128.store8_lane 0 (local.get $target) (local.get $codes))
            (if (i32.ge_u (local.get $outputs) (i32.const 2))
              (then (v128.store8_lane offset=1 1 (local.get $target) (local.get $codes))))
            (if (i32.ge_u (local.get $outputs) (i32.const 3))
              (then (v128.store8_lane offset=2 2 (local.get $target) (local.get $codes))))))

        (local.set $source (i32.add (local.get $source) (local.get $sourceStep)))
        (local.set $target (i32.add (local.get $target) (local.get $targetStep)))
        (local.set $pixels (i32.sub (local.get $pixels) (i32.const 1)))
        (br $next)))))
