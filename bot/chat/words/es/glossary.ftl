command-define = qué significa una palabra
define-what = Escribe la palabra después, así: */palabra numerador*
define-example = Por ejemplo: { $example }
define-lesson = De la lección *{ $title }*.
define-in-lessons = { $term } (en las lecciones: { $english })
define-near = “{ $word }” no es una palabra de este curso. ¿Quisiste decir una de estas?
define-unknown = “{ $word }” no es una palabra de este curso. ¿Se escribe de otra manera? Tu tutor también puede saberlo.
not-for-you-in-test = Las palabras se pueden consultar cuando la prueba esté entregada. Haz lo que puedas sin ellas, está bien así.
