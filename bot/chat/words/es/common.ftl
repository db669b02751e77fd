and = { $first } y { $last }
not-linked = Este es un ayudante de estudio privado, y este chat no está unido a nadie. Si un tutor te envió un enlace, ábrelo otra vez, por favor.
leave-group = Solo hablo con las personas una por una, así que dejo este grupo. Escríbeme en un chat aparte, por favor.
file-missing = Un archivo que va aquí no se pudo preparar ahora. Pídelo otra vez dentro de un rato.
trouble = Algo falló por nuestra parte. Lo que enviaste está a salvo. Sigue dentro de unos minutos, por favor.
not-for-you-gone = Ese botón ya tuvo su momento. Lo que está abierto ahora se encuentra más abajo.
not-for-you-other = Ese es de otra persona que usa este teléfono.
not-for-you-grown-up = Ese lo tiene que pulsar una persona mayor.
not-for-you-student = Ese es para el estudiante. Pásale antes el teléfono.
not-for-you-not-earned = La solución se abre después de un intento con una pista, o cuando hayas pedido ayuda dos veces. Inténtalo primero.
not-for-you-too-early = Puedes parar desde la mitad del repaso. Si hoy es demasiado, */small* lo acorta.
not-for-you-no-student = Nadie comparte este teléfono.
no-such-command = Esa orden no la conozco. /help muestra las que hay.
no-such-command-near = Esa orden no la conozco. ¿Querías decir { $near }? /help muestra el resto, con ejemplos.
not-for-you-no-consent = Primero tiene que dar permiso tu padre o tu madre, enviando /agree (en un teléfono compartido, antes /back). Después empezamos.

help-student = Esto es lo que puedes hacer.
    
    Escribe la respuesta tal como la dirías: { $examples }. Para contestar una pregunta anterior, responde a su mensaje.
    
    ¿Te atascas? Pulsa **Pista** o escribe *no sé*. Preguntar no cuesta nada.
help-shared = Pasa el teléfono con /hand y recupéralo con /back.
help-parent = Cada tarde recibes un mensaje por cada hijo. No hay nada que corregir.
help-tutor = Cada cambio se muestra antes de hacerse, y /undo deshace el último.
