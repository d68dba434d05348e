;; Arithmetic of the network over rows of 32-bit floats, four at a time. A row's length in bytes is a multiple of 64.
(module
  (memory (export "memory") 1)
  ;; target[i] += factor * source[i] up to the byte address $end of the source
  (func (export "addScaled") (param $target i32) (param $source i32) (param $end i32) (param $factor f32)
    (local $by v128)
    (local.set $by (f32x4.splat (local.get $factor)))
    (loop $next
      (v128.store (local.get $target) (f32x4.add (v128.load (local.get $target)) (f32x4.mul (local.get $by) (v128.load (local.get $source)))))
      (v128.store offset=16 (local.get $target) (f32x4.add (v128.load offset=16 (local.get $target)) (f32x4.mul (local.get $by) (v128.load offset=16 (local.get $source)))))
      (v128.store offset=32 (local.get $target) (f32x4.add (v128.load offset=32 (local.get $target)) (f32x4.mul (local.get $by) (v128.load offset=32 (local.get $source)))))
      (v128.store offset=48 (local.get $target) (f32x4.add (v128.load offset=48 (local.get $target)) (f32x4.mul (local.get $by) (v128.load offset=48 (local.get $source)))))
      (local.set $target (i32.add (local.get $target) (i32.const 64)))
      (local.set $source (i32.add (local.get $source) (i32.const 64)))
      (br_if $next (i32.lt_u (local.get $source) (local.get $end)))))
  ;; the sum of left[i] * right[i] up to the byte address $end of the right one
  (func (export "dot") (param $left i32) (param $right i32) (param $end i32) (result f32)
    (local $a v128) (local $b v128) (local $c v128) (local $d v128)
    (loop $next
      (local.set $a (f32x4.add (local.get $a) (f32x4.mul (v128.load (local.get $left)) (v128.load (local.get $right)))))
      (local.set $b (f32x4.add (local.get $b) (f32x4.mul (v128.load offset=16 (local.get $left)) (v128.load offset=16 (local.get $right)))))
      (local.set $c (f32x4.add (local.get $c) (f32x4.mul (v128.load offset=32 (local.get $left)) (v128.load offset=32 (local.get $right)))))
      (local.set $d (f32x4.add (local.get $d) (f32x4.mul (v128.load offset=48 (local.get $left)) (v128.load offset=48 (local.get $right)))))
      (local.set $left (i32.add (local.get $left) (i32.const 64)))
      (local.set $right (i32.add (local.get $right) (i32.const 64)))
      (br_if $next (i32.lt_u (local.get $right) (local.get $end))))
    (local.set $a (f32x4.add (f32x4.add (local.get $a) (local.get $b)) (f32x4.add (local.get $c) (local.get $d))))
    (f32.add
      (f32.add (f32x4.extract_lane 0 (local.get $a)) (f32x4.extract_lane 1 (local.get $a)))
      (f32.add (f32x4.extract_lane 2 (local.get $a)) (f32x4.extract_lane 3 (local.get $a))))))
